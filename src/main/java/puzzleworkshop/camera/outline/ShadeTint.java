package puzzleworkshop.camera.outline;

import java.util.Arrays;

/**
 * The colour of shadow, read off paper that lies in it: another lamp reaches there, and a phone's tone curve bends the three channels
 * apart.
 */
final class ShadeTint {

    /** Cells between a board and paper whose shade is read. */
    private static final int AWAY = 2;

    /** Logarithms of light against lit paper between which paper is shaded and its colour still told. */
    private static final double SHADED = 0.15;

    private static final double DEEPEST = 1.4;
    private static final int FEWEST_SHADED = 80;
    private static final double MOST_TINT = 0.35;

    private ShadeTint() {}

    /** What shadow adds to red less blue, and to red less green, for each unit of the level: median slopes; none where too little is shaded. */
    static double[] of(BoardMask mask) {
        Ground ground = mask.ground;
        double[] redBlue = new double[mask.far.length];
        double[] redGreen = new double[mask.far.length];
        int n = 0;
        for (int row = AWAY; row < ground.rows - AWAY; row++) {
            for (int column = AWAY; column < ground.columns - AWAY; column++) {
                int cell = row * ground.columns + column;
                double level = mask.colour[0][cell];
                if (ground.kind[cell] == Ground.Kind.PAPER
                        && level < -SHADED
                        && level > -DEEPEST
                        && isClear(mask, cell)) {
                    redBlue[n] = mask.colour[1][cell] / level;
                    redGreen[n++] = mask.colour[2][cell] / level;
                }
            }
        }
        if (n < FEWEST_SHADED) {
            return new double[2];
        }
        Arrays.sort(redBlue, 0, n);
        Arrays.sort(redGreen, 0, n);
        return new double[] {
            Math.clamp(redBlue[n / 2], -MOST_TINT, MOST_TINT), Math.clamp(redGreen[n / 2], -MOST_TINT, MOST_TINT)
        };
    }

    /** No board near. */
    private static boolean isClear(BoardMask mask, int cell) {
        for (int dr = -AWAY; dr <= AWAY; dr++) {
            for (int dc = -AWAY; dc <= AWAY; dc++) {
                if (mask.board[cell + dr * mask.ground.columns + dc]) {
                    return false;
                }
            }
        }
        return true;
    }
}
