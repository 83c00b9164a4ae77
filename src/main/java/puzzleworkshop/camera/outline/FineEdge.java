package puzzleworkshop.camera.outline;

import java.util.Arrays;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.rings.Ring;
import puzzleworkshop.camera.rings.Stretch;

/**
 * The last refinement of an edge that colour has found. Photos store colour for two by two pixels and in rough steps, so where wood
 * and paper part by colour may be pixels off; brightness is stored for each pixel. Near the coarse edge brightness tells where it is
 * ({@link BrightSteps}); where it does not, or colour over a longer stretch speaks against it, colour has the word.
 */
final class FineEdge {

    /** Cuts to both sides that are taken together once the edge is known. */
    private static final int TOGETHER = 2;

    /** How far colour may stray where nothing tells, mm. */
    private static final double REACH_UNSEEN = 1;

    /** Points to both sides over which colour is taken together, and how many pixels its mean may be off. */
    private static final int STRETCH = 10;

    private static final double FARTHEST = 1.3;

    private final Photo photo;
    private final BoardMask mask;
    private final EdgeSearch search;

    FineEdge(Photo photo, BoardMask mask, EdgeSearch search) {
        this.photo = photo;
        this.mask = mask;
        this.search = search;
    }

    /**
     * An edge as brightness tells it.
     *
     * @param ring points {@link Ring#SPACING} apart, in mm on the plane z = 0, the board to its right
     * @param seen share of the points where a step of brightness was found
     * @param strays how far brightness lies from colour in one of twenty points, mm
     */
    record Edge(double[] ring, double seen, double strays) {}

    /**
     * Where brightness steps, point by point.
     *
     * @param off how far along its normal each point moves, mm; not a number where brightness does not tell
     * @param sizes by how much brightness rises outwards; 0 where it does not tell
     */
    private record Steps(double[] off, double[] sizes) {}

    /** @param ring points {@link Ring#SPACING} apart, in mm on the plane z = 0, the board to its right */
    Edge refined(double[] ring) {
        int n = Ring.size(ring);
        double scale = scale(ring);
        Steps first = steps(ring, Math.clamp(3.5 / scale, 0.45, 1.3), scale, 0);
        double[] off = believed(first.off, ring, scale);
        boolean[] told = new boolean[n];
        double[] far = new double[n];
        int found = 0;
        for (int i = 0; i < n; i++) {
            told[i] = Double.isFinite(off[i]);
            if (told[i]) {
                far[found++] = Math.abs(off[i]);
            }
        }
        Arrays.sort(far, 0, found);
        double strays = found == 0 ? REACH_UNSEEN : far[(int) (0.95 * (found - 1))];
        double[] byColour = moved(ring, EdgeGaps.filled(off));
        boolean[] before = told.clone();
        EdgeGaps.doubt(told, byColour);
        double[] bridged = EdgeGaps.bridged(byColour, told);
        Steps again = steps(bridged, 1.5 / scale, scale, TOGETHER);
        double[] moved = moved(bridged, EdgeGaps.filled(again.off));
        EdgeGaps.restore(moved, byColour, told, before, first.sizes, again.sizes);
        int count = 0;
        for (boolean t : told) {
            count += t ? 1 : 0;
        }
        return new Edge(moved, (double) count / n, strays);
    }

    private static double[] moved(double[] ring, double[] off) {
        double[] normals = Ring.normals(ring, 3);
        double[] out = new double[ring.length];
        for (int i = 0; i < off.length; i++) {
            out[2 * i] = ring[2 * i] + off[i] * normals[2 * i];
            out[2 * i + 1] = ring[2 * i + 1] + off[i] * normals[2 * i + 1];
        }
        return out;
    }

    private double scale(double[] ring) {
        double scale = 0;
        int n = Ring.size(ring);
        int count = 0;
        for (int i = 0; i < n; i += Math.max(1, n / 16)) {
            scale += mask.ground.seen.view().pixelsPerMm(ring[2 * i], ring[2 * i + 1]);
            count++;
        }
        return Math.max(1, scale / count);
    }

    /** @param together cuts to both sides that are taken together; with none colour helps to choose */
    private Steps steps(double[] ring, double reach, double scale, int together) {
        int n = Ring.size(ring);
        double[] normals = Ring.normals(ring, 3);
        int half = (int) Math.ceil(reach * scale * 3);
        double step = reach / half;
        double[][] bright = new double[n][];
        for (int i = 0; i < n; i++) {
            bright[i] = brightness(ring, normals, i, half, step);
        }
        BrightSteps find = new BrightSteps(mask, scale);
        Stretch stretch = new Stretch(normals, 0.985);
        BrightSteps.Step[][] steps = new BrightSteps.Step[n][];
        for (int i = 0; i < n; i++) {
            double[] cut = stretch.mean(bright, i, together);
            double[] at = {ring[2 * i], ring[2 * i + 1], normals[2 * i], normals[2 * i + 1]};
            double[] colour = together == 0 ? search.share(at[0], at[1], at[2], at[3]) : null;
            steps[i] = find.of(cut, step, colour, at);
        }
        int[] taken = find.taken(steps, normals);
        double[] off = new double[n];
        double[] sizes = new double[n];
        for (int i = 0; i < n; i++) {
            off[i] = taken[i] < 0 ? Double.NaN : steps[i][taken[i]].off();
            sizes[i] = taken[i] < 0 ? 0 : steps[i][taken[i]].size();
        }
        return new Steps(off, sizes);
    }

    private double[] brightness(double[] ring, double[] normals, int i, int half, double step) {
        double x = ring[2 * i];
        double y = ring[2 * i + 1];
        double reach = half * step;
        double[] cut = new double[2 * half + 1];
        double[] from = new double[2];
        double[] to = new double[2];
        double[] white = new double[3];
        mask.paper.at(x, y, white);
        double full = 0.2126 * white[0] + 0.7152 * white[1] + 0.0722 * white[2];
        boolean shown = mask.ground
                        .seen
                        .view()
                        .project(x - reach * normals[2 * i], y - reach * normals[2 * i + 1], 0, from)
                && mask.ground.seen.view().project(x + reach * normals[2 * i], y + reach * normals[2 * i + 1], 0, to);
        for (int s = 0; shown && s < cut.length; s++) {
            double t = (double) s / (cut.length - 1);
            cut[s] = photo.brightness(from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])) / full;
        }
        return cut;
    }

    /**
     * Colour strays from point to point, but over a stretch its mean is true to a pixel. A whole stretch of steps farther from it is
     * something else: the rim of a narrow shadow, a line of grain.
     */
    private static double[] believed(double[] off, double[] ring, double scale) {
        int n = off.length;
        double[] kept = off.clone();
        Stretch stretch = new Stretch(Ring.normals(ring, 3), 0.9);
        for (int i = 0; i < n; i++) {
            if (Math.abs(stretch.median(off, i, STRETCH, STRETCH / 2 + 1)) * scale > FARTHEST) {
                kept[i] = Double.NaN;
            }
        }
        return kept;
    }
}
