package puzzleworkshop.camera.outline;

/** The lamp mirrored in the paper beside a board: brighter than paper can be, so the edge there is not seen. */
final class Glare {

    /** Logarithm of light against lit paper. */
    private static final double BRIGHTER = 0.16;

    /** So many bright cells at least, and so large a share of all around. */
    private static final int FEWEST = 40;

    private static final int ONE_IN = 25;

    private Glare() {}

    static boolean isBeside(BoardMask mask, int[] part) {
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
        return bright > Math.max(FEWEST, beside / ONE_IN);
    }
}
