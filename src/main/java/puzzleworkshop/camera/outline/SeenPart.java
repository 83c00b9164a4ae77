package puzzleworkshop.camera.outline;

import java.util.Arrays;
import puzzleworkshop.camera.rings.Regions;
import puzzleworkshop.camera.rings.Ring;
import puzzleworkshop.camera.walls.Silhouette;
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

    /** Boards that are farther from paper than this, in its spreads, are nowhere as white as paper. */
    private static final double FAR_FROM_PAPER = 7;

    /** A face so much nearer to paper than it mostly is along its edge, and for so many mm of the edge, may be wood burnt out. */
    private static final double PALER = 0.65;

    private static final double PALE_MM = 4;

    /** Logarithm of light against lit paper below which no face is white. */
    private static final double DEEP_SHADE = -0.7;

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

    /**
     * Of wood that is nearly as white as paper a bright line of grain is as white, and looks like a slot in the board: its sides fade,
     * where a real slot's are as wooden as all edges.
     */
    void requireOneColour(double[] ring, Silhouette silhouette) {
        if (mask.apart > FAR_FROM_PAPER) {
            return;
        }
        int n = Ring.size(ring);
        double[] normals = Ring.normals(ring, 4);
        double[] beside = new double[n];
        double[] level = new double[n];
        for (int i = 0; i < n; i++) {
            double wall = Math.max(0, silhouette.wall(ring, normals, i));
            for (int k = 0; k < 5; k++) {
                double off = -wall - 1 - 0.4 * k;
                int cell = mask.ground.cell(
                        ring[2 * i] + off * normals[2 * i], ring[2 * i + 1] + off * normals[2 * i + 1]);
                beside[i] += cell < 0 ? 0 : mask.far[cell] / 5;
                level[i] += cell < 0 ? 0 : mask.colour[0][cell] / 5;
            }
        }
        double[] sorted = beside.clone();
        Arrays.sort(sorted);
        int run = 0;
        for (int k = 0; k < 2 * n; k++) {
            run = beside[k % n] < PALER * sorted[n / 2] ? run + 1 : 0;
            if (run * Ring.SPACING > PALE_MM) {
                // what is no more coloured than paper, but dark, is paper in a shadow
                throw new Refused(level[k % n] < DEEP_SHADE ? "camera.outline.shadow" : "camera.outline.white");
            }
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
