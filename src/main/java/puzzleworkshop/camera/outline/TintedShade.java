package puzzleworkshop.camera.outline;

import java.util.Arrays;
import java.util.List;

/**
 * Shadows with a colour of their own, where lamp and sky differ: dark and blue enough to be taken for board. What was taken then has
 * two colours, and one of them is that of shaded paper: dark, and hardly coloured for its darkness.
 */
final class TintedShade {

    /** Each of the two colours must be that of so large a share. */
    private static final double LEAST_SHARE = 0.02;

    private static final int ROUNDS = 12;

    /** Logarithms of red against blue and green between the two colours, at least; strongly grained wood has a third of it. */
    private static final double APART = 0.35;

    /** Logarithm of light against lit paper: lighter is no shadow that could be taken for a board. */
    private static final double SHADED = -0.7;

    /** Shadows are tinted for each unit of their level by this at most, common practice for lamp and window. */
    private static final double MOST_TINT = 0.22;

    /** Cells between a board and paper whose shade is read. */
    private static final int AWAY = 2;

    /** Logarithms of light against lit paper between which paper is shaded and its colour still told. */
    private static final double LEAST_SHADE = 0.15;

    private static final double DEEPEST = 1.4;
    private static final int FEWEST_SHADED = 80;
    private static final double MOST_SLOPE = 0.35;

    private final float[][] colour;

    /** Of wood and of shade: red less blue, red less green, level, cells. */
    private double[] wood;

    private double[] shade;

    /** Whether there is such a shadow. */
    final boolean found;

    /** @param core cells that were taken for board, away from their edges */
    TintedShade(float[][] colour, int[] core) {
        this.colour = colour;
        float[] redBlue = new float[core.length];
        for (int i = 0; i < core.length; i++) {
            redBlue[i] = colour[1][core[i]];
        }
        Arrays.sort(redBlue);
        double low = redBlue[(int) (LEAST_SHARE * core.length)];
        double high = redBlue[(int) ((1 - LEAST_SHARE) * core.length)];
        wood = mean(core, cell -> colour[1][cell] >= high);
        shade = mean(core, cell -> colour[1][cell] <= low);
        for (int round = 0; round < ROUNDS; round++) {
            double[] one = mean(core, cell -> !isShade(cell));
            shade = mean(core, this::isShade);
            wood = one;
        }
        if (tint(wood) < tint(shade)) {
            double[] one = wood;
            wood = shade;
            shade = one;
        }
        found = Math.min(wood[3], shade[3]) > LEAST_SHARE * core.length
                && Math.hypot(wood[0] - shade[0], wood[1] - shade[1]) > APART
                && shade[2] < SHADED
                && tint(shade) < MOST_TINT;
    }

    private double[] mean(int[] core, java.util.function.IntPredicate which) {
        double[] sum = new double[4];
        for (int cell : core) {
            if (which.test(cell)) {
                sum[0] += colour[1][cell];
                sum[1] += colour[2][cell];
                sum[2] += colour[0][cell];
                sum[3]++;
            }
        }
        for (int i = 0; i < 3; i++) {
            sum[i] /= Math.max(1, sum[3]);
        }
        return sum;
    }

    private static double tint(double[] mean) {
        return Math.hypot(mean[0], mean[1]) / Math.max(0.1, -mean[2]);
    }

    private boolean isShade(int cell) {
        return Math.hypot(colour[1][cell] - shade[0], colour[2][cell] - shade[1])
                < Math.hypot(colour[1][cell] - wood[0], colour[2][cell] - wood[1]);
    }

    /** Those that are wood. */
    int[] withoutShade(int[] core) {
        return Arrays.stream(core).filter(cell -> !isShade(cell)).toArray();
    }

    /** Shade that hangs together with wood is its shadow; by itself it is another thing. */
    boolean[] shadows(List<int[]> parts) {
        boolean[] shadows = new boolean[colour[0].length];
        for (int[] part : parts) {
            long wooden = Arrays.stream(part).filter(cell -> !isShade(cell)).count();
            if (wooden > LEAST_SHARE * part.length) {
                for (int cell : part) {
                    shadows[cell] = isShade(cell);
                }
            }
        }
        return shadows;
    }

    /**
     * The colour of shadow, read off paper that lies in it: another lamp reaches there, and a phone's tone curve bends the three channels
     * apart. What it adds to red less blue, and to red less green, for each unit of the level: median slopes; none where too little is shaded.
     */
    static double[] slopes(BoardMask mask) {
        Ground ground = mask.ground;
        double[] redBlue = new double[mask.far.length];
        double[] redGreen = new double[mask.far.length];
        int n = 0;
        for (int row = AWAY; row < ground.rows - AWAY; row++) {
            for (int column = AWAY; column < ground.columns - AWAY; column++) {
                int cell = row * ground.columns + column;
                double level = mask.colour[0][cell];
                if (ground.kind[cell] == Ground.Kind.PAPER
                        && level < -LEAST_SHADE
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
            Math.clamp(redBlue[n / 2], -MOST_SLOPE, MOST_SLOPE), Math.clamp(redGreen[n / 2], -MOST_SLOPE, MOST_SLOPE)
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
