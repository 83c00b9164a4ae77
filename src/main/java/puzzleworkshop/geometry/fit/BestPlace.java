package puzzleworkshop.geometry.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.Segments;
import puzzleworkshop.geometry.Turn;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Size;

/**
 * The place for one rectangle on one board that leaves the most valuable remainder by {@link UsefulSizes}.
 *
 * <p>At one angle only the corners of the convex hull of the set of places need be looked at: if some other rectangle
 * still fits beside the blank, a line parts the two; slide the blank away from that line as far as the set of places
 * goes, it then stands on such a corner and the other still fits. Angles tried: the board's edge directions, upright,
 * and every whole degree (ranges of degrees are skipped by the argument of {@link RectangleFit} applied to blank and
 * rung together); if it fits at none of these, an angle found by {@link RectangleFit}. With grain only the allowed
 * angles. Rungs in the remainder are tried at the board's main edge directions and the blank's.
 *
 * <p>A curved board has hundreds of such corners. Neighbouring ones are judged together first: when nothing better fits
 * beside the part that all blanks there have in common, it fits beside none of them; else the group is halved. And a looser
 * border with few pieces is asked first ({@link Profile#looseBorder()}): what does not fit there fits nowhere on the board.
 */
public final class BestPlace {

    /** A place with the rung that the remainder still stands on. */
    public record Found(Placement placement, int rung, Area remainderValue) {}

    private static final int MOST_TIES = 24;

    /**
     * Border pieces looked at (see {@link PlaceSearch#work()}), after which no further angle is begun once a place is
     * known: about a quarter of a second. What was found by then stands; only boards with several hundred corners ever
     * come so far.
     */
    static final long MOST_WORK = 50_000_000;

    /** Of equal places so many are compared by what remains, on boards with few corners; fewer with many. */
    private static final int COMPARED = 12;

    private static final int COMPARED_PIECES = 2_000;

    private final Profile board;
    private final double w;
    private final double h;
    private final UsefulSizes sizes;
    private final double[] allowed;
    private final PlaceSearch search = new PlaceSearch();
    private final RemainderClass rungs;
    private RemainderClass loosely;
    private boolean isLoose;
    private final List<Placement> ties = new ArrayList<>();
    private Placement best;
    private int bestRung;
    private int cap;

    /** @param allowed the only angles allowed; null for any */
    public BestPlace(Profile board, Size blank, double[] allowed, UsefulSizes sizes) {
        this.board = board;
        this.w = blank.width().mm();
        this.h = blank.height().mm();
        this.sizes = sizes;
        this.allowed = allowed;
        this.rungs = new RemainderClass(board, board.border, sizes);
        this.loosely = rungs;
    }

    /** Whether it fits at all. */
    public boolean fits() {
        if (!board.mayHold(w, h)) {
            return false;
        }
        if (allowed == null) {
            return board.surelyHolds(w, h)
                    || new RectangleFit()
                            .place(board.border, w, h, board.directions)
                            .isPresent();
        }
        for (double degrees : allowed) {
            if (search.any(board.border.seenFrom(degrees), w, h)) {
                return true;
            }
        }
        return false;
    }

    /** The value of the remainder can at most be this; may be called without a search. */
    double mostRemainderValue() {
        double left = Math.max(0, board.area - w * h);
        return sizes.value(left, Math.min(board.rung, sizes.highestFor(left)));
    }

    /** The highest rung that still fits beside a blank placed there. */
    int rungLeftBy(Placement place) {
        return rungs.highest(
                place, w, h, UsefulSizes.SCRAP, Math.min(board.rung, sizes.highestFor(board.area - w * h)));
    }

    /** Empty when it does not fit. Of equal places the one that leaves the largest rectangle. */
    Optional<Found> best() {
        return search(true, true);
    }

    /** As {@link #best()}, but any of the equally valued places. */
    Optional<Found> anyBest() {
        return search(false, true);
    }

    /** As {@link #anyBest()}, but without the sweep over whole degrees: for when thousands of places are weighed up. */
    public Optional<Found> atEdges() {
        return search(false, false);
    }

    private Optional<Found> search(boolean finest, boolean sweeping) {
        if (!board.mayHold(w, h)) {
            return Optional.empty();
        }
        cap = Math.min(board.rung, sizes.highestFor(board.area - w * h));
        bestRung = UsefulSizes.SCRAP - 1;
        beginLoosely();
        for (double degrees : firstAngles()) {
            lookAt(degrees);
            if (!finest && bestRung == cap || best != null && work() > MOST_WORK) {
                break;
            }
        }
        if (best == null) {
            Optional<Placement> any = anyPlace();
            any.ifPresent(place -> lookAt(place.degrees()));
            if (best == null) {
                any.ifPresent(this::judge);
            }
        }
        if (best == null) {
            return Optional.empty();
        }
        if (allowed == null && sweeping) {
            sweepAll();
        }
        Placement chosen = finest ? leavingTheLargestRectangle() : best;
        double left = Math.max(0, board.area - w * h);
        return Optional.of(new Found(chosen, bestRung, Area.mm2(sizes.value(left, bestRung))));
    }

    private void beginLoosely() {
        isLoose = board.looseBorder() != board.border;
        loosely = isLoose ? new RemainderClass(board, board.looseBorder(), sizes) : rungs;
    }

    /**
     * The place that makes {@link #fits()} say yes. Where it fits by less than the tolerance only, the corners that are
     * computed for the exact blank lie outside by more than that, and this place between them is the only one.
     */
    private Optional<Placement> anyPlace() {
        RectangleFit fit = new RectangleFit();
        if (allowed == null) {
            return fit.place(board.border, w, h, board.likely());
        }
        return DoubleStream.of(allowed)
                .mapToObj(degrees -> fit.placeAt(board.border, w, h, degrees))
                .flatMap(Optional::stream)
                .findFirst();
    }

    private void sweepAll() {
        boolean[] missed = new boolean[cap + 1];
        for (int goal = Math.max(0, bestRung + 1); goal <= cap; goal++) {
            boolean hopeless = false;
            for (int lower = 0; lower < goal; lower++) {
                hopeless |= missed[lower] && rungs.isHeldBy(lower, goal);
            }
            for (int i = 0; i < 8 && goal > bestRung && !hopeless; i++) {
                sweep(i * 180 / 8, (i + 1) * 180 / 8 - 1, goal);
            }
            missed[goal] = goal > bestRung;
        }
    }

    private double[] firstAngles() {
        if (allowed != null) {
            return allowed;
        }
        double[] both = new double[board.directions.length * (w == h ? 1 : 2)];
        for (int i = 0; i < both.length; i++) {
            double degrees = board.directions[i % board.directions.length];
            both[i] = i < board.directions.length ? degrees : degrees + 90;
        }
        return both;
    }

    private void lookAt(double degrees) {
        judgeAll(hullPlaces(degrees, w, h));
    }

    private void judgeAll(List<Placement> places) {
        if (places.size() <= 1) {
            places.forEach(this::judge);
            return;
        }
        int floor = bestRung >= cap && ties.size() >= MOST_TIES ? bestRung : bestRung - 1;
        RemainderClass.Common common = RemainderClass.common(places, w, h);
        if (floor >= UsefulSizes.SCRAP
                && (floor >= cap || common.isThere() && !mayLeaveMore(common.place(), common.w(), common.h(), floor))) {
            return;
        }
        judgeAll(places.subList(0, places.size() / 2));
        judgeAll(places.subList(places.size() / 2, places.size()));
    }

    private boolean mayLeaveMore(Placement blank, double width, double height, int floor) {
        return (!isLoose || loosely.any(blank, width, height, floor, cap))
                && rungs.any(blank, width, height, floor, cap);
    }

    private void judge(Placement place) {
        int floor = bestRung - 1;
        boolean enough = bestRung >= cap && ties.size() >= MOST_TIES
                || isLoose && floor >= UsefulSizes.SCRAP && !loosely.any(place, w, h, floor, cap);
        int rung = enough ? floor : rungs.highest(place, w, h, floor, cap);
        if (rung > bestRung) {
            bestRung = rung;
            best = place;
            ties.clear();
        }
        if (rung == bestRung) {
            ties.add(place);
        }
    }

    /** Looks at whole degrees low…high for a place beside which the goal fits. */
    private void sweep(int low, int high, int goal) {
        if (low > high || bestRung >= goal || work() > MOST_WORK) {
            return;
        }
        if (low == high) {
            if (!isLoose || mayReach(low, low, goal)) {
                judgeAll(hullPlaces(low, w, h));
            }
        } else if (mayReach(low, high, goal)) {
            int middle = (low + high) / 2;
            sweep(low, middle, goal);
            sweep(middle + 1, high, goal);
        }
    }

    long work() {
        return search.work() + rungs.work() + (isLoose ? loosely.work() : 0);
    }

    private boolean mayReach(int low, int high, int goal) {
        double middle = (low + high) / 2.0;
        double range = (high - low) / 2.0;
        double lessW = RectangleFit.shrunk(w, h, range);
        double lessH = RectangleFit.shrunk(h, w, range);
        if (lessW < 1 || lessH < 1) {
            return true;
        }
        return mayReach(hullPlaces(board.looseBorder(), middle, lessW, lessH), lessW, lessH, goal, range);
    }

    private boolean mayReach(List<Placement> places, double lessW, double lessH, int goal, double range) {
        if (places.isEmpty()) {
            return false;
        }
        RemainderClass.Common common = RemainderClass.common(places, lessW, lessH);
        if (common.isThere() && !loosely.mayFit(common.place(), common.w(), common.h(), goal, range)) {
            return false;
        }
        return places.size() == 1
                || mayReach(places.subList(0, places.size() / 2), lessW, lessH, goal, range)
                || mayReach(places.subList(places.size() / 2, places.size()), lessW, lessH, goal, range);
    }

    private List<Placement> hullPlaces(double degrees, double width, double height) {
        return hullPlaces(board.border, degrees, width, height);
    }

    private List<Placement> hullPlaces(Segments border, double degrees, double width, double height) {
        int corners = search.corners(border.seenFrom(degrees), width, height);
        if (corners == 0) {
            return List.of();
        }
        List<Point> spots = new ArrayList<>();
        for (int i = 0; i < corners; i++) {
            spots.add(new Point(search.x(i), search.y(i)));
        }
        double cos = Turn.cos(degrees);
        double sin = Turn.sin(degrees);
        double kept = Turn.within(degrees, 180);
        double flip = Math.abs(Turn.within(degrees, 360) - kept) > 1 ? 1 : 0;
        return ConvexHull.of(spots).stream()
                .map(s -> new Placement(
                        s.xMm() * cos - s.yMm() * sin + flip * (width * cos - height * sin),
                        s.xMm() * sin + s.yMm() * cos + flip * (width * sin + height * cos),
                        kept))
                .toList();
    }

    private Placement leavingTheLargestRectangle() {
        Placement chosen = best;
        double most = -1;
        int compared = Math.clamp(COMPARED_PIECES / board.coarseBorder().count, 1, COMPARED);
        if (compared == 1) {
            return best;
        }
        for (Placement place : ties.subList(0, Math.min(compared, ties.size()))) {
            double area = LargestRectangle.area(
                    board.coarseBorder().without(place, w, h), new double[] {place.degrees(), board.mainDirections[0]});
            if (area > most * (1 + 1e-9)) {
                most = area;
                chosen = place;
            }
        }
        return chosen;
    }
}
