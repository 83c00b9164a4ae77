package puzzleworkshop.camera.pieces;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import puzzleworkshop.camera.outline.TopView;
import puzzleworkshop.camera.pieces.PieceCheck.LaidPiece;

/**
 * Pieces whose pictures lie up. Where a picture is as pale as the paper or as dark as the cloth its edge is not seen, and where it is
 * grey it looks like its own shadow; so no outline is made and then compared, but the known outlines are laid into the photo and
 * settle where brightness and colour step along them (closest points along the normals, after Chen and Medioni, Object modelling by
 * registration of multiple range images, 1992). What of an outline finds no step counts as far off: nothing speaks for it.
 */
final class PictureFit {

    private static final int POINTS = PlaceEdge.POINTS;

    /** So many outlines are laid in for each thing, those nearest by the thing's own rough outline. */
    private static final int LAID_IN = 20;

    /** Area of a thing with its shadow against that of a piece. */
    private static final double LEAST_SHARE = 0.5;

    private static final double MOST_SHARE = 1.5;

    /** How far to both sides a step is looked for in each round, mm. */
    private static final double[] REACH = {2.4, 2, 1.6, 1.2, 1, 0.8, 0.6, 0.5, 0.5, 0.5};

    private static final double STEP = 0.1;

    /** Steps are taken between what lies so many samples to both sides: 0.2 mm, more than a photo's blur. */
    private static final int HALF = 2;

    /** In code values of all three colours together: less is noise or the weave of a cloth, so many times what is seen beside the piece. */
    private static final double OVER_NOISE = 4;

    private static final double LEAST_STEP = 0.025;
    private static final double MOST_NOISE = 0.06;

    /** Steps beyond this are all equally clear. */
    private static final double CLEAR_STEP = 0.3;

    /** A point without a step counts as far off as this, mm. */
    private static final double UNSEEN_MM = 1;

    /** Nearer than this, mm, a piece surely lies there. */
    private static final double SURE_MM = 0.45;

    /** Farther than this it may as well be a part of another piece. */
    private static final double LOST_MM = 0.5;

    /** What was not laid in. */
    private static final double NOT_TRIED = 2;

    private static final double AROUND = 4;

    /** Where nothing is but what lies below, mm outside of a piece. */
    private static final double BESIDE = 2.6;

    private final TopView top;
    private final List<PieceProfile> places;
    private final PlaceEdge[] known;

    PictureFit(TopView top, List<PieceProfile> places) {
        this.top = top;
        this.places = places;
        known = places.stream().map(p -> new PlaceEdge(p.ring)).toArray(PlaceEdge[]::new);
    }

    /**
     * A piece laid in.
     *
     * @param unseenMm2 of its face, by the longest stretch of its edge that is not seen
     * @param ring its edge, mm
     * @param x of the middle of what was seen of it
     */
    record Laid(LaidPiece piece, double unseenMm2, double[] ring, double x, double y) {

        /** Whether another one, not fitting better, is this one seen again, or a part of it: a pale stretch runs through the picture. */
        boolean covers(Laid other) {
            return isSure() && holds(other.x, other.y);
        }

        boolean isSure() {
            return piece.nearest() < SURE_MM;
        }

        private boolean holds(double px, double py) {
            boolean in = false;
            for (int i = 0; i < ring.length; i += 2) {
                int j = (i + 2) % ring.length;
                if (ring[i + 1] > py != ring[j + 1] > py
                        && px < ring[i] + (py - ring[i + 1]) / (ring[j + 1] - ring[i + 1]) * (ring[j] - ring[i])) {
                    in = !in;
                }
            }
            return in;
        }
    }

    /** @param blob around something that lies there, clockwise as seen, mm */
    Laid laid(double[] blob) {
        return laid(blob, LAID_IN);
    }

    /** The same with every outline: what lies over a marker, or is as pale as the paper in a corner, has a blob like another piece's. */
    Laid laidAnywhere(double[] blob) {
        return laid(blob, places.size());
    }

    private Laid laid(double[] blob, int most) {
        PieceProfile found = new PieceProfile(blob, false);
        int n = places.size();
        double[] distances = new double[n];
        Arrays.fill(distances, NOT_TRIED);
        double[] rough = new double[n];
        double[][] turns = new double[n][];
        for (int p = 0; p < n; p++) {
            double share = found.area / places.get(p).area;
            rough[p] = PieceCheck.FAR;
            if (share > LEAST_SHARE && share < MOST_SHARE) {
                turns[p] = found.onto(places.get(p));
                rough[p] = turns[p][0];
            }
        }
        int[] nearest = IntStream.range(0, n)
                .filter(p -> turns[p] != null)
                .boxed()
                .sorted((a, b) -> Double.compare(rough[a], rough[b]))
                .limit(most)
                .mapToInt(p -> p)
                .toArray();
        double[] ring = blob;
        double unseen = 0;
        double[] shown = new double[0];
        if (nearest.length > 0) {
            TopView.Patch patch = patch(blob);
            double least = Double.MAX_VALUE;
            for (int p : nearest) {
                Pose pose = new Pose();
                pose.cos = turns[p][1];
                pose.sin = -turns[p][2];
                pose.x = found.middleX;
                pose.y = found.middleY;
                distances[p] = settled(patch, known[p], pose);
                if (distances[p] < least) {
                    least = distances[p];
                    ring = moved(known[p].ring, pose);
                    unseen = pose.unseen * places.get(p).area;
                    shown = shown(p, pose);
                }
            }
            if (least > LOST_MM) {
                // something between: no piece is named after it, nor called foreign
                Arrays.fill(distances, NOT_TRIED);
            }
        }
        return new Laid(
                new LaidPiece(top.inPhoto(ring), distances, found.area, shown),
                unseen,
                ring,
                found.middleX,
                found.middleY);
    }

    /** Where on the pattern the edge of a place stands out. */
    private double[] shown(int place, Pose pose) {
        double[] shown = new double[2 * POINTS];
        int count = 0;
        for (int i = 0; i < POINTS; i++) {
            if (pose.stepsAt[i]) {
                shown[count++] = known[place].x[i] + places.get(place).middleX;
                shown[count++] = known[place].y[i] + places.get(place).middleY;
            }
        }
        return Arrays.copyOf(shown, count);
    }

    private TopView.Patch patch(double[] blob) {
        double[] box = {Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
        for (int i = 0; i < blob.length; i += 2) {
            box[0] = Math.min(box[0], blob[i]);
            box[1] = Math.min(box[1], blob[i + 1]);
            box[2] = Math.max(box[2], blob[i]);
            box[3] = Math.max(box[3], blob[i + 1]);
        }
        return top.patch(box[0] - AROUND, box[1] - AROUND, box[2] + AROUND, box[3] + AROUND);
    }

    private static double[] moved(double[] ring, Pose pose) {
        double[] moved = new double[ring.length];
        for (int i = 0; i < ring.length; i += 2) {
            moved[i] = pose.x(ring[i], ring[i + 1]);
            moved[i + 1] = pose.y(ring[i], ring[i + 1]);
        }
        return moved;
    }

    /** Settles a piece where the photo steps along its edge: root mean square distance of the edge from the steps, mm. */
    private static double settled(TopView.Patch patch, PlaceEdge place, Pose pose) {
        double[] off = new double[POINTS];
        double[] size = new double[POINTS];
        pose.least = Math.clamp(OVER_NOISE * beside(patch, place, pose), LEAST_STEP, MOST_NOISE);
        for (double reach : REACH) {
            steps(patch, place, pose, reach, off, size);
            move(place, pose, reach, off, size);
        }
        double last = REACH[REACH.length - 1];
        steps(patch, place, pose, last, off, size);
        double sum = 0;
        int run = 0;
        int longest = 0;
        for (int i = 0; i < POINTS; i++) {
            pose.stepsAt[i] = size[i] > 0;
            sum += (size[i] > 0 ? off[i] * off[i] : UNSEEN_MM * UNSEEN_MM) / POINTS;
        }
        // around the ring, a single step within a pale stretch may be chance
        for (int i = 0; i < 2 * POINTS; i++) {
            boolean seen = size[i % POINTS] > 0 && size[(i + 1) % POINTS] > 0;
            run = seen ? 0 : Math.min(POINTS, run + 1);
            longest = Math.max(longest, run);
        }
        pose.unseen = (double) longest / POINTS;
        return Math.sqrt(sum);
    }

    /** The median step where there should be none, a little outside of the edge. */
    private static double beside(TopView.Patch patch, PlaceEdge place, Pose pose) {
        double[] steps = new double[POINTS];
        double[] in = new double[3];
        double[] out = new double[3];
        for (int i = 0; i < POINTS; i++) {
            double nx = pose.cos * place.nx[i] - pose.sin * place.ny[i];
            double ny = pose.sin * place.nx[i] + pose.cos * place.ny[i];
            double x = pose.x(place.x[i], place.y[i]) + BESIDE * nx;
            double y = pose.y(place.x[i], place.y[i]) + BESIDE * ny;
            patch.at(x - HALF * STEP * nx, y - HALF * STEP * ny, in);
            patch.at(x + HALF * STEP * nx, y + HALF * STEP * ny, out);
            steps[i] = Math.hypot(Math.hypot(out[0] - in[0], out[1] - in[1]), out[2] - in[2]);
        }
        Arrays.sort(steps);
        return steps[POINTS / 2];
    }

    /** The clearest step across each point of the edge, nearer ones preferred: how far outwards, and how large; 0 where there is none. */
    private static void steps(
            TopView.Patch patch, PlaceEdge place, Pose pose, double reach, double[] off, double[] size) {
        int half = (int) Math.round(reach / STEP);
        int count = 2 * (half + HALF + 1) + 1;
        double[][] cut = new double[count][3];
        double[] strength = new double[count];
        for (int i = 0; i < POINTS; i++) {
            double px = pose.x(place.x[i], place.y[i]);
            double py = pose.y(place.x[i], place.y[i]);
            double nx = pose.cos * place.nx[i] - pose.sin * place.ny[i];
            double ny = pose.sin * place.nx[i] + pose.cos * place.ny[i];
            for (int s = 0; s < count; s++) {
                double o = (s - count / 2) * STEP;
                patch.at(px + o * nx, py + o * ny, cut[s]);
            }
            for (int s = HALF; s < count - HALF; s++) {
                double sum = 0;
                for (int c = 0; c < 3; c++) {
                    double d = cut[s + HALF][c] - cut[s - HALF][c];
                    sum += d * d;
                }
                strength[s] = Math.sqrt(sum);
            }
            double best = 0;
            off[i] = 0;
            size[i] = 0;
            for (int s = HALF + 1; s < count - HALF - 1; s++) {
                if (strength[s] < pose.least || strength[s] < strength[s - 1] || strength[s] <= strength[s + 1]) {
                    continue;
                }
                double bend = strength[s - 1] - 2 * strength[s] + strength[s + 1];
                double o = (s - count / 2 + (bend < 0 ? (strength[s - 1] - strength[s + 1]) / 2 / bend : 0)) * STEP;
                double near = o / (0.5 * reach);
                double worth = Math.min(strength[s], CLEAR_STEP) / (1 + near * near);
                if (worth > best) {
                    best = worth;
                    off[i] = o;
                    size[i] = worth;
                }
            }
        }
    }

    private static void move(PlaceEdge place, Pose pose, double reach, double[] off, double[] size) {
        double[][] a = new double[3][4];
        for (int i = 0; i < POINTS; i++) {
            if (size[i] <= 0) {
                continue;
            }
            double nx = pose.cos * place.nx[i] - pose.sin * place.ny[i];
            double ny = pose.sin * place.nx[i] + pose.cos * place.ny[i];
            double rx = pose.x(place.x[i], place.y[i]) - pose.x;
            double ry = pose.y(place.x[i], place.y[i]) - pose.y;
            double[] j = {nx, ny, rx * ny - ry * nx};
            double d = off[i] / (0.4 * reach);
            double weight = size[i] / (1 + d * d);
            for (int r = 0; r < 3; r++) {
                for (int c = 0; c < 3; c++) {
                    a[r][c] += weight * j[r] * j[c];
                }
                a[r][3] += weight * j[r] * off[i];
            }
        }
        pose.settle(a);
    }
}
