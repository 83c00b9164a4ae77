package puzzleworkshop.camera.outline;

import puzzleworkshop.measure.Refused;

/** Whether a part of the raster that looks like board is one as a whole: within the photo, with a face, and no lamp at its edge. */
final class SeenPart {

    /**
     * What is nowhere thicker than this, in thicknesses and mm beyond, is no board but its side wall or its shadow: the face is
     * as white as the paper. A strip wider than twice {@link #WIDE_ENOUGH} is a board in any case, however thick.
     */
    private static final double WALL_ALONE = 0.75;

    private static final double WALL_BLUR = 1;

    private static final double WIDE_ENOUGH = 6;

    /** Logarithm of light against lit paper. */
    private static final double BRIGHTER = 0.16;

    /** So many bright cells at least, and so large a share of all around. */
    private static final int FEWEST_BRIGHT = 40;

    private static final int ONE_IN = 25;

    private final BoardMask mask;

    SeenPart(BoardMask mask) {
        this.mask = mask;
    }

    void requireWhole(int[] part) {
        Ground ground = mask.ground;
        for (int cell : part) {
            int r = cell / ground.columns;
            int c = cell % ground.columns;
            for (int dr = -3; dr <= 3; dr += 3) {
                for (int dc = -3; dc <= 3; dc += 3) {
                    int row = r + dr;
                    int column = c + dc;
                    if (row < 0 || column < 0 || row >= ground.rows || column >= ground.columns) {
                        throw new Refused(
                                ground.seen.sheet().parts() == 1 ? "camera.outline.oversheet" : "camera.cards.beyond");
                    }
                    if (ground.kind[row * ground.columns + column] == Ground.Kind.UNSEEN) {
                        throw new Refused("camera.outline.overphoto");
                    }
                }
            }
        }
    }

    void requireFace(int[] part, double thickness) {
        boolean[] in = new boolean[mask.board.length];
        for (int cell : part) {
            in[cell] = true;
        }
        int deepest = 0;
        for (int depth : Regions.depth(in, mask.ground.columns, mask.ground.rows)) {
            deepest = Math.max(deepest, depth);
        }
        if (deepest * Ground.STEP < Math.min(WALL_ALONE * thickness + WALL_BLUR, WIDE_ENOUGH)) {
            throw new Refused("camera.outline.pale");
        }
    }

    /** The lamp mirrored in the paper beside a board: brighter than paper can be, so the edge there is not seen. */
    void requireNoGlare(int[] part) {
        int beside = 0;
        int bright = 0;
        int columns = mask.ground.columns;
        for (int cell : part) {
            for (int step : new int[] {-2, 2, -2 * columns, 2 * columns}) {
                int other = cell + step;
                if (other >= 0 && other < mask.board.length && !mask.board[other]) {
                    beside++;
                    bright += mask.ground.kind[other] == Ground.Kind.PAPER && mask.colour[0][other] > BRIGHTER ? 1 : 0;
                }
            }
        }
        if (bright > Math.max(FEWEST_BRIGHT, beside / ONE_IN)) {
            throw new Refused("camera.photo.glare");
        }
    }
}
