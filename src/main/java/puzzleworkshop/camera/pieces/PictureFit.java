package puzzleworkshop.camera.pieces;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
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

    /** So many turns of each outline are gone on with where it is looked for by edges alone, and so many of all together. */
    private static final int TURNS = 3;

    private static final int SEARCHED = 60;

    /** So many are gone on with after rough settling, and so many outlines settled as finely as can be. */
    private static final int GONE_ON_WITH = 12;

    private static final int SETTLED = 6;

    /** What is farther off than so many times the best, and this many mm, is not gone on with. */
    private static final double MUCH_FARTHER = 2;

    private static final double SAME_MM = 0.15;

    /** Area of a thing with its shadow against that of a piece. */
    private static final double LEAST_SHARE = 0.5;

    private static final double MOST_SHARE = 1.5;

    /** Nearer than this, mm, a piece surely lies there. */
    private static final double SURE_MM = 0.45;

    private static final double CLEAR_MM = 0.3;

    /** Farther than this it may as well be a part of another piece. */
    private static final double LOST_MM = 0.5;

    /** What was not laid in. */
    private static final double NOT_TRIED = 2;

    private static final double AROUND = 4;

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
            return isSure() && (holds(other.x, other.y) || other.isSure() && lies(other));
        }

        /** Of one piece two things may be seen, the middle of one of them beside it; where they are laid in tells. */
        private boolean lies(Laid other) {
            double middleX = 0;
            double middleY = 0;
            for (int i = 0; i < other.ring.length; i += 2) {
                middleX += 2 * other.ring[i] / other.ring.length;
                middleY += 2 * other.ring[i + 1] / other.ring.length;
            }
            return holds(middleX, middleY);
        }

        boolean isSure() {
            return piece.nearest() < SURE_MM;
        }

        /** The likeliest one. */
        int place() {
            double[] all = piece.distances();
            return IntStream.range(0, all.length)
                    .reduce((a, b) -> all[b] < all[a] ? b : a)
                    .orElseThrow();
        }

        /** Nothing is won by looking again. */
        boolean isClear() {
            return piece.nearest() < CLEAR_MM;
        }

        boolean holds(double px, double py) {
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
        PieceProfile found = new PieceProfile(blob, false);
        return laid(found, blob, nearest(found));
    }

    /**
     * The same with outlines that are looked for by their edges alone, in every turn: what lies over a marker, or is as pale as the
     * paper in a corner, has a blob like another piece's, and what a pale stretch runs through has two.
     *
     * @param may which places' outlines may lie there
     */
    Laid laidAnywhere(double[] blob, boolean[] may) {
        PieceProfile found = new PieceProfile(blob, false);
        OutlineSearch search = OutlineSearch.around(found.middleX, found.middleY, reach(), top::patch);
        List<Start> starts = new ArrayList<>(nearest(found));
        IntStream.range(0, may.length)
                .filter(p -> may[p])
                .boxed()
                .flatMap(p -> search.of(p, known[p], TURNS).stream())
                .sorted(Comparator.comparingDouble(OutlineSearch.Start::covered).reversed())
                .limit(SEARCHED)
                .forEach(start -> starts.add(new Start(start.place(), start.pose())));
        return laid(found, blob, starts);
    }

    private double reach() {
        return Arrays.stream(known).mapToDouble(PlaceEdge::reach).max().orElse(0);
    }

    /** An outline and where it lies at first. */
    private record Start(int place, Pose pose) {}

    private record Turned(int place, double[] turn) {}

    private boolean isAsLarge(PieceProfile found, int place) {
        double share = found.area / places.get(place).area;
        return share > LEAST_SHARE && share < MOST_SHARE;
    }

    /** The outlines nearest to a thing's own; those that cannot be by {@link PieceProfile#atLeast} are not laid on. */
    private List<Start> nearest(PieceProfile found) {
        double[] bound = new double[places.size()];
        int[] likely = IntStream.range(0, bound.length)
                .filter(p -> isAsLarge(found, p))
                .peek(p -> bound[p] = found.atLeast(places.get(p)))
                .boxed()
                .sorted((a, b) -> Double.compare(bound[a], bound[b]))
                .mapToInt(p -> p)
                .toArray();
        PriorityQueue<Turned> nearest = new PriorityQueue<>((a, b) -> Double.compare(b.turn[0], a.turn[0]));
        for (int p : likely) {
            if (nearest.size() == LAID_IN && bound[p] >= nearest.peek().turn[0]) {
                break;
            }
            nearest.add(new Turned(p, found.onto(places.get(p))));
            if (nearest.size() > LAID_IN) {
                nearest.remove();
            }
        }
        return nearest.stream()
                .map(one -> {
                    Pose pose = new Pose();
                    pose.cos = one.turn[1];
                    pose.sin = -one.turn[2];
                    pose.x = found.middleX;
                    pose.y = found.middleY;
                    return new Start(one.place, pose);
                })
                .toList();
    }

    /** Of many starts those that come nearest, settled as finely as can be, each outline once. */
    private List<Settling> narrowed(PieceProfile found, double[] blob, List<Start> starts) {
        if (starts.isEmpty()) {
            return List.of();
        }
        TopView.Patch patch = patch(blob, starts);
        List<Settling> all = new ArrayList<>();
        for (Start start : starts) {
            Settling one = new Settling(start.place, known[start.place], start.pose, patch);
            one.settle(Settling.ROUGH);
            all.add(one);
        }
        List<Settling> nearer = best(all, GONE_ON_WITH);
        nearer.forEach(one -> one.settle(Settling.NEARER));
        Map<Integer, Settling> once = new LinkedHashMap<>();
        best(nearer, GONE_ON_WITH).forEach(one -> once.putIfAbsent(one.place, one));
        List<Settling> fine = best(once.values(), SETTLED);
        fine.forEach(one -> one.settle(Settling.FINE));
        if (fine.stream().allMatch(one -> one.distance() > CLEAR_MM)) {
            double[] foot = top.foot(found.middleX, found.middleY);
            return fine.stream().map(one -> one.besides(foot)).toList();
        }
        return fine;
    }

    /** Those not much farther off than the best. */
    private static List<Settling> best(Collection<Settling> settled, int most) {
        double least = settled.stream().mapToDouble(Settling::distance).min().orElse(0);
        return settled.stream()
                .filter(one -> one.distance() < MUCH_FARTHER * least + SAME_MM)
                .sorted(Comparator.comparingDouble(Settling::distance))
                .limit(most)
                .toList();
    }

    private Laid laid(PieceProfile found, double[] blob, List<Start> starts) {
        double[] distances = new double[places.size()];
        Arrays.fill(distances, NOT_TRIED);
        Settling best = null;
        for (Settling one : narrowed(found, blob, starts)) {
            distances[one.place] = Math.min(distances[one.place], one.distance());
            if (best == null || one.distance() < best.distance()) {
                best = one;
            }
        }
        if (best != null && best.distance() > LOST_MM) {
            // something between: no piece is named after it, nor called foreign
            Arrays.fill(distances, NOT_TRIED);
        }
        double[] ring = best == null ? blob : moved(known[best.place].ring, best.pose);
        return new Laid(
                new LaidPiece(
                        top.inPhoto(ring),
                        distances,
                        found.area,
                        best == null ? new double[0] : shown(best.place, best.pose)),
                best == null ? 0 : best.pose.unseen * places.get(best.place).area,
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

    /** Around a thing, and around every outline where it is laid in. */
    private TopView.Patch patch(double[] blob, List<Start> starts) {
        double[] box = {Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
        for (int i = 0; i < blob.length; i += 2) {
            take(box, blob[i], blob[i + 1], AROUND);
        }
        for (Start start : starts) {
            take(box, start.pose.x, start.pose.y, known[start.place].reach() + AROUND / 2);
        }
        return top.patch(box[0], box[1], box[2], box[3]);
    }

    private static void take(double[] box, double x, double y, double around) {
        box[0] = Math.min(box[0], x - around);
        box[1] = Math.min(box[1], y - around);
        box[2] = Math.max(box[2], x + around);
        box[3] = Math.max(box[3], y + around);
    }

    private static double[] moved(double[] ring, Pose pose) {
        double[] moved = new double[ring.length];
        for (int i = 0; i < ring.length; i += 2) {
            moved[i] = pose.x(ring[i], ring[i + 1]);
            moved[i + 1] = pose.y(ring[i], ring[i + 1]);
        }
        return moved;
    }
}
