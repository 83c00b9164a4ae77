package puzzleworkshop.camera.outline;

import java.util.Arrays;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.model.View;
import puzzleworkshop.camera.rings.Lines;
import puzzleworkshop.camera.rings.Ring;
import puzzleworkshop.camera.rings.Stretch;
import puzzleworkshop.measure.Refused;

/**
 * The proof of an outline: seen on the plane of the board's top, all that lies within it is face. A shadow that was taken for wood is
 * as grey as paper there, a wall as dark as burnt wood. How strong a colour is against its own brightness tells them apart, whatever
 * light falls there; single pixels of a JPEG do not, so a stretch of the edge is taken together.
 */
final class FaceEdge {

    /** Between depths at which the top is read, mm. */
    private static final double STEP = 0.2;

    /** Deepest reading, mm. What is no face so far in along a stretch is no error of an edge. */
    private static final double DEEPEST = 4;

    /** Points to both sides that are taken together. */
    private static final int TOGETHER = 4;

    /** A point so far in must lie nearer to this edge than to another one, by this share of its depth. */
    private static final double NEAREST = 0.8;

    /** So much of the face's own strength of colour is face. */
    private static final double IS_FACE = 0.5;

    /** A face whose colour scatters more than this against its own strength cannot be proven by it. */
    private static final double MOST_SCATTER = 0.16;

    /** A face less coloured than this is black or grey, and told by its darkness alone. */
    private static final double FAINTEST = 0.03;

    /** The same where a light face is hardly more coloured than white paper: an edge may be off by half a block of the JPEG's colour. */
    private static final double FAINT = 0.08;

    private static final double LIGHT = 0.5;
    private static final double BLOCK_PIXELS = 8;

    /** Less than this is the photo's own blur of colour, in pixels and mm. */
    private static final double BLUR_PIXELS = 3;

    private static final double BLUR_MM = 0.35;

    /** Points of a stretch without face that is no mark on the wood. */
    private static final int FEWEST = 5;

    private final Photo photo;
    private final BoardMask mask;
    private final BoardColour colour;
    private final double thickness;

    FaceEdge(Photo photo, BoardMask mask, double thickness) {
        this.photo = photo;
        this.mask = mask;
        this.thickness = thickness;
        this.colour = new BoardColour(mask);
    }

    /**
     * An edge with face all along.
     *
     * @param ring of the top, in mm, the board to its right
     * @param doubt by how much it may lie farther in, mm
     */
    record Edge(double[] ring, double doubt) {}

    /**
     * The same ring without what is no face.
     *
     * @param ring edge of the top, in mm, the board to its right
     * @throws Refused when a shadow lies deep within it
     */
    Edge proven(double[] ring) {
        int n = Ring.size(ring);
        double[] normals = Ring.normals(ring, 4);
        int depths = (int) Math.round(DEEPEST / STEP) + 1;
        double[][] read = new double[n][];
        for (int i = 0; i < n; i++) {
            read[i] = strengths(ring, normals, i, depths);
        }
        Stretch stretch = new Stretch(normals, 0.9);
        double[][] along = new double[n][depths];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < depths; k++) {
                along[i][k] = stretch.mean(read, k, i, TOGETHER);
            }
        }
        double[] deep = Arrays.stream(along)
                .mapToDouble(one -> one[depths - 1])
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        if (deep.length < n / 4) {
            return new Edge(ring, 0);
        }
        double face = deep[deep.length / 2];
        boolean faint = face < FAINT && mask.byColour && mask.wood[0] + mask.wood[1] + mask.wood[2] > 3 * LIGHT;
        double doubt = faint ? BLOCK_PIXELS / scale(ring, 0) : 0;
        if (face < FAINTEST || scatter(deep) > MOST_SCATTER) {
            return new Edge(ring, doubt);
        }
        double limit = IS_FACE * face;
        double[] in = new double[n];
        for (int i = 0; i < n; i++) {
            in[i] = begins(along[i], limit);
        }
        return moved(ring, normals, in, doubt);
    }

    private double scale(double[] ring, int i) {
        return Math.max(1, mask.ground.seen.view().pixelsPerMm(ring[2 * i], ring[2 * i + 1]));
    }

    private static double scatter(double[] sorted) {
        int n = sorted.length;
        return (sorted[n * 3 / 4] - sorted[n / 4]) / 1.35 / Math.max(1e-6, sorted[n / 2]);
    }

    /** Strength of the board's colour by depth; not a number beyond what belongs to this edge. */
    private double[] strengths(double[] ring, double[] normals, int i, int depths) {
        double[] strengths = new double[depths];
        Arrays.fill(strengths, Double.NaN);
        View view = mask.ground.seen.view();
        double[] uv = new double[2];
        double[] white = new double[3];
        double[] light = new double[3];
        for (int k = 0; k < depths; k++) {
            double deep = k * STEP;
            double x = ring[2 * i] - deep * normals[2 * i];
            double y = ring[2 * i + 1] - deep * normals[2 * i + 1];
            if (!mask.ground.isOnSheet(x, y)
                    || k % 5 == 0 && k > 0 && Lines.fromRing(ring, x, y) < NEAREST * deep
                    || !view.project(x, y, -thickness, uv)) {
                break;
            }
            mask.paper.at(x, y, white);
            PaperLight.against(white, photo, uv[0], uv[1], light);
            strengths[k] = colour.strength(light, x, y);
        }
        return strengths;
    }

    /** How far in the face begins, seen from deep within: 0 where it reaches the edge. */
    private static double begins(double[] means, double limit) {
        for (int k = means.length - 1; k >= 0; k--) {
            if (means[k] < limit) {
                return (k + 1) * STEP;
            }
        }
        return 0;
    }

    private Edge moved(double[] ring, double[] normals, double[] in, double before) {
        double doubt = before;
        int n = in.length;
        double[] out = ring.clone();
        for (int i = 0; i < n; i++) {
            double blur = Math.max(BLUR_MM, BLUR_PIXELS / scale(ring, i));
            if (!isStretch(in, i, blur)) {
                // too little to move by; but where it is so along a stretch it may as well be so
                doubt = isStretch(in, i, STEP) ? Math.max(doubt, Math.min(in[i], blur)) : doubt;
                continue;
            }
            if (in[i] > DEEPEST - STEP) {
                throw new Refused("camera.outline.shadow");
            }
            out[2 * i] -= in[i] * normals[2 * i];
            out[2 * i + 1] -= in[i] * normals[2 * i + 1];
            doubt = Math.max(doubt, blur);
        }
        return new Edge(out, doubt);
    }

    /** Whether here and at most points around more than that is no face. */
    private static boolean isStretch(double[] in, int i, double more) {
        int count = 0;
        for (int d = -FEWEST; d <= FEWEST; d++) {
            count += in[Math.floorMod(i + d, in.length)] > more ? 1 : 0;
        }
        return in[i] > more && count > FEWEST;
    }
}
