package puzzleworkshop.camera.outline;

/**
 * Traces of something that lies there and was not found: a picture as white as the paper has no edge, but a thing of some thickness
 * shows a wall or throws a shadow. Looked for away from what was found, which has its own.
 */
final class Leftovers {

    /** In spreads of the backdrop: surely something else. */
    private static final double OTHER = 2.8;

    /** Logarithm of light against lit paper: shaded by something near. */
    private static final float SHADED = -0.15f;

    /** A trace has so many cells at least; dust and noise have fewer. */
    private static final int FEWEST_CELLS = 24;

    private Leftovers() {}

    /**
     * @param awayMm from everything found
     * @param mostMm2 larger than this is the shadow of a hand or of the phone
     */
    static boolean areThere(BoardMask mask, double awayMm, double mostMm2) {
        Ground ground = mask.ground;
        boolean[] beside = new boolean[mask.board.length];
        for (int cell = 0; cell < beside.length; cell++) {
            beside[cell] = !mask.board[cell];
        }
        int[] away = Regions.depth(beside, ground.columns, ground.rows);
        byte[] trace = new byte[beside.length];
        for (int cell = 0; cell < trace.length; cell++) {
            boolean isFree = away[cell] * Ground.STEP > awayMm;
            trace[cell] = (byte) (isFree && isTrace(mask, cell) ? 1 : 0);
        }
        double most = mostMm2 / (Ground.STEP * Ground.STEP);
        return Regions.parts(trace, ground.columns, ground.rows, FEWEST_CELLS).stream()
                .anyMatch(part -> part.length < most);
    }

    private static boolean isTrace(BoardMask mask, int cell) {
        return switch (mask.ground.kind[cell]) {
            case PAPER -> mask.far[cell] > OTHER || mask.colour[0][cell] < SHADED;
            case TABLE -> mask.ground.seen.sheet().parts() > 1 && mask.far[cell] > OTHER;
            default -> false;
        };
    }
}
