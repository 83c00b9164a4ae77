package puzzleworkshop.camera.outline;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import puzzleworkshop.camera.rings.Regions;

/**
 * Where something lies, whatever its colours: all that is neither lit paper nor cloth. Of a printed picture grey is not told from a
 * shadow by colour, so shadows are taken along; which is which the known outlines tell afterwards.
 */
final class LyingThings {

    /** In spreads of the backdrop: surely something else. */
    private static final double OTHER = 2.8;

    /**
     * Logarithms of light against lit paper: no paper, or paper in a shadow as deep as that. Things whose shadows run together are
     * parted by taking only what is darker; what lies in no shadow at all comes last.
     */
    private static final float[] DARK = {-0.14f, -0.3f, -0.6f, -0.9f, -1.3f};

    /** The same for cloth, in its spreads; last what is surely board. */
    private static final float[] OTHER_THAN_CLOTH = {4, Float.MAX_VALUE};

    private static final int GAP = 2;

    private LyingThings() {}

    /**
     * @param smallestMm2 what is smaller is a crumb
     * @param largestMm2 what is larger is more than one thing, if it can be parted
     * @param faint whether what hardly stands out counts as well: more of pale pictures, and more of shadows
     */
    static List<int[]> parts(BoardMask mask, double smallestMm2, double largestMm2, boolean faint) {
        boolean[] within = new boolean[mask.far.length];
        Arrays.fill(within, true);
        int largest = (int) (largestMm2 / (Ground.STEP * Ground.STEP));
        List<int[]> parts = new ArrayList<>();
        // all that has to be parted is parted at once: each time the whole ground is gone over
        boolean more = true;
        for (int level = faint ? 0 : 1; more && level < DARK.length; level++) {
            more = false;
            boolean[] next = new boolean[within.length];
            for (int[] part : parts(mask, within, faint, level, (int) (smallestMm2 / (Ground.STEP * Ground.STEP)))) {
                if (part.length <= largest || level + 1 == DARK.length) {
                    parts.add(part);
                    continue;
                }
                more = true;
                for (int cell : part) {
                    next[cell] = true;
                }
            }
            within = next;
        }
        return parts;
    }

    private static List<int[]> parts(BoardMask mask, boolean[] within, boolean faint, int level, int smallest) {
        Ground ground = mask.ground;
        boolean onCloth = ground.seen.sheet().parts() > 1;
        byte[] state = new byte[mask.far.length];
        for (int cell = 0; cell < state.length; cell++) {
            boolean other = switch (ground.kind[cell]) {
                case PAPER -> mask.far[cell] > OTHER || mask.colour[0][cell] < DARK[level];
                case TABLE ->
                    onCloth
                            && (mask.board[cell]
                                    || mask.far[cell] > OTHER_THAN_CLOTH[Math.min(level, OTHER_THAN_CLOTH.length - 1)]);
                case PRINTED, RIM -> mask.board[cell];
                case UNSEEN, MARKER -> false;
            };
            state[cell] = (byte) (within[cell] && other ? 1 : 0);
        }
        if (faint) {
            close(state, ground.columns, ground.rows);
        }
        Regions.open(state, ground.columns, ground.rows);
        return Regions.parts(state, ground.columns, ground.rows, smallest);
    }

    /**
     * Fills what lines go around: where a picture is as white as the paper its edge still is a thin line of wall and shadow. Gaps up
     * to twice {@link #GAP} cells are bridged.
     */
    private static void close(byte[] state, int columns, int rows) {
        boolean[] free = new boolean[state.length];
        for (int cell = 0; cell < state.length; cell++) {
            free[cell] = state[cell] == 0;
        }
        int[] away = Regions.depth(free, columns, rows);
        byte[] wide = new byte[state.length];
        for (int cell = 0; cell < state.length; cell++) {
            wide[cell] = (byte) (away[cell] > GAP ? 1 : 0);
        }
        boolean[] filled = new boolean[state.length];
        Arrays.fill(filled, true);
        int largest = 0;
        // what lies around all things is by far the largest free part; whatever free part it does not reach is inside
        // of something
        for (int[] part : Regions.parts(wide, columns, rows, 1)) {
            if (part.length > largest) {
                largest = part.length;
                Arrays.fill(filled, true);
                for (int cell : part) {
                    filled[cell] = false;
                }
            }
        }
        int[] depth = Regions.depth(filled, columns, rows);
        for (int cell = 0; cell < state.length; cell++) {
            state[cell] = (byte) (depth[cell] > GAP ? 1 : 0);
        }
    }
}
