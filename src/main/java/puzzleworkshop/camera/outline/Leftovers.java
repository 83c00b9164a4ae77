package puzzleworkshop.camera.outline;

import java.util.Arrays;
import java.util.List;
import puzzleworkshop.camera.rings.PatchMeans;
import puzzleworkshop.camera.rings.Regions;
import puzzleworkshop.camera.rings.Traces;

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

    /** Cells to each side of a patch of cloth, and of what it is compared with: 3.5 and 25 mm. */
    private static final int PATCH = 3;

    private static final int WIDE = 25;

    /** A patch that stands out so far is no cloth. */
    private static final double DEVIATIONS = 5.5;

    /** In logarithms of light: where a JPEG has smoothed all weave away, what is left of it still is no trace. */
    private static final double LEAST_OFF = 0.12;

    private static final int FEWEST_ON_CLOTH = 60;

    private Leftovers() {}

    /**
     * @param found cells of each thing that was found
     * @param awayMm from everything found
     * @param mostMm2 larger than this is the shadow of a hand or of the phone
     */
    static Traces of(BoardMask mask, List<int[]> found, double awayMm, double mostMm2) {
        Ground ground = mask.ground;
        boolean[] beside = new boolean[mask.board.length];
        Arrays.fill(beside, true);
        for (int[] part : found) {
            for (int cell : part) {
                beside[cell] = false;
            }
        }
        int[] away = Regions.depth(beside, ground.columns, ground.rows);
        boolean onCloth = ground.seen.sheet().parts() > 1;
        boolean[] free = new boolean[beside.length];
        for (int cell = 0; cell < free.length; cell++) {
            free[cell] = away[cell] * Ground.STEP > awayMm
                    && ground.kind[cell] == (onCloth ? Ground.Kind.TABLE : Ground.Kind.PAPER);
        }
        byte[] trace = onCloth ? onCloth(mask, free) : onPaper(mask, free);
        double most = mostMm2 / (Ground.STEP * Ground.STEP);
        return new Traces(
                Regions.parts(trace, ground.columns, ground.rows, onCloth ? FEWEST_ON_CLOTH : FEWEST_CELLS).stream()
                        .filter(part -> part.length < most)
                        .map(part -> {
                            double[] places = new double[2 * part.length];
                            for (int i = 0; i < part.length; i++) {
                                places[2 * i] = ground.x(part[i]);
                                places[2 * i + 1] = ground.y(part[i]);
                            }
                            return places;
                        })
                        .toList(),
                awayMm);
    }

    private static byte[] onPaper(BoardMask mask, boolean[] free) {
        byte[] trace = new byte[free.length];
        for (int cell = 0; cell < trace.length; cell++) {
            trace[cell] = (byte) (free[cell] && (mask.far[cell] > OTHER || mask.colour[0][cell] < SHADED) ? 1 : 0);
        }
        return trace;
    }

    /** A cloth has a weave of its own: what stands out from it does so as a patch, against how much its patches scatter everywhere. */
    private static byte[] onCloth(BoardMask mask, boolean[] free) {
        byte[] trace = new byte[free.length];
        int columns = mask.ground.columns;
        int rows = mask.ground.rows;
        for (float[] colour : mask.colour) {
            PatchMeans means = new PatchMeans(colour, free, columns, rows);
            double[] off = new double[free.length];
            double[] sizes = new double[free.length];
            int count = 0;
            for (int cell = 0; cell < off.length; cell++) {
                if (free[cell]) {
                    off[cell] = means.around(cell, PATCH) - means.around(cell, WIDE);
                    sizes[count++] = Math.abs(off[cell]);
                }
            }
            if (count == 0) {
                return trace;
            }
            Arrays.sort(sizes, 0, count);
            // the median of what is normally distributed lies at 0.6745 deviations
            double limit = Math.max(LEAST_OFF, DEVIATIONS * sizes[count / 2] / 0.6745);
            for (int cell = 0; cell < off.length; cell++) {
                trace[cell] |= (byte) (Math.abs(off[cell]) > limit ? 1 : 0);
            }
        }
        return trace;
    }
}
