package puzzleworkshop.geometry.fit;

import java.util.List;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Segments;
import puzzleworkshop.geometry.Turn;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Size;

/**
 * Which rungs of the ladder still fit on a board beside a blank, at the board's main edge directions and the blank's own.
 *
 * <p>Rungs are tried from below: one that holds a rung which did not fit cannot fit either and is not tried.
 */
final class RemainderClass {

    private final Profile board;
    private final Segments border;
    private final UsefulSizes sizes;
    private final PlaceSearch search = new PlaceSearch();

    /** The border from each main direction, made when first needed, and from the blank that was looked at last. */
    private final Segments[] mains;

    private Segments along;
    private double alongDegrees;

    /** @param border of the board, or a looser one around it: then 'does not fit' holds for the board, 'fits' need not */
    RemainderClass(Profile board, Segments border, UsefulSizes sizes) {
        this.board = board;
        this.border = border;
        this.sizes = sizes;
        this.mains = new Segments[board.mainDirections.length];
    }

    /** See {@link PlaceSearch#work()}. */
    long work() {
        return search.work();
    }

    /** The highest rung above the floor, up to the cap, that fits; the floor (or scrap, if that is higher) when none does. */
    int highest(Placement blank, double w, double h, int floor, int cap) {
        int found = Math.max(floor, UsefulSizes.SCRAP);
        if (found >= cap) {
            return found;
        }
        for (int d = -1; d < board.mainDirections.length && found < cap; d++) {
            found = highestAt(rest(d, blank, w, h), found, cap);
        }
        return found;
    }

    /** Whether any rung above the floor fits: a blank that lies inside another leaves at least what the other does. */
    boolean any(Placement blank, double w, double h, int floor, int cap) {
        if (floor >= cap) {
            return false;
        }
        for (int d = -1; d < board.mainDirections.length; d++) {
            Segments seen = rest(d, blank, w, h);
            for (int k = floor + 1; k <= cap; k++) {
                if (!holdsOneOf(floor + 1, k) && fits(seen, k, 0)) {
                    return true;
                }
            }
        }
        return false;
    }

    private int highestAt(Segments seen, int floor, int cap) {
        int found = floor;
        boolean[] failed = new boolean[cap + 1];
        for (int k = floor + 1; k <= cap; k++) {
            failed[k] = holdsFailed(failed, k) || !fits(seen, k, 0);
            found = failed[k] ? found : k;
        }
        return found;
    }

    private boolean holdsFailed(boolean[] failed, int k) {
        for (int lower = 0; lower < k; lower++) {
            if (failed[lower] && sizes.rung(lower).fitsUpright(sizes.rung(k))) {
                return true;
            }
        }
        return false;
    }

    /** Whether some rung from the first on lies inside this one, so that only the smaller need be tried. */
    private boolean holdsOneOf(int first, int k) {
        for (int lower = first; lower < k; lower++) {
            if (sizes.rung(lower).fitsUpright(sizes.rung(k))) {
                return true;
            }
        }
        return false;
    }

    /** Whether a higher rung cannot be reached where this one was not. */
    boolean isHeldBy(int rung, int higher) {
        return sizes.rung(rung).fitsUpright(sizes.rung(higher));
    }

    /** @param rangeDegrees the rung may be turned by up to so much: then what is inside it at every such angle must fit */
    boolean fits(Segments seen, int rung, double rangeDegrees) {
        Size size = sizes.rung(rung);
        double a = size.width().mm();
        double b = size.height().mm();
        if (rangeDegrees > 0) {
            double lessA = RectangleFit.shrunk(a, b, rangeDegrees);
            b = RectangleFit.shrunk(b, a, rangeDegrees);
            a = lessA;
            if (a < 1 || b < 1) {
                return true;
            }
        }
        return search.any(seen, a, b) || a != b && search.any(seen, b, a);
    }

    /** Whether the rung fits beside a blank turned by up to the range, the rung along with it or at a main direction. */
    boolean mayFit(Placement blank, double w, double h, int rung, double rangeDegrees) {
        if (fits(rest(-1, blank, w, h), rung, rangeDegrees)) {
            return true;
        }
        for (int d = 0; d < board.mainDirections.length; d++) {
            if (fits(rest(d, blank, w, h), rung, 0)) {
                return true;
            }
        }
        return false;
    }

    /** What the blank leaves, seen from a main direction of the board, or from the blank's own (-1); good until the next. */
    private Segments rest(int direction, Placement blank, double w, double h) {
        double degrees = direction < 0 ? blank.degrees() : board.mainDirections[direction];
        Segments seen = direction < 0 ? alongTheBlank(degrees) : mains[direction];
        if (seen == null) {
            seen = border.seenFrom(degrees).withRoom();
            mains[direction] = seen;
        }
        seen.put(blank, w, h, degrees);
        return seen;
    }

    private Segments alongTheBlank(double degrees) {
        if (along == null || alongDegrees != degrees) {
            along = border.seenFrom(degrees).withRoom();
            alongDegrees = degrees;
        }
        return along;
    }

    /**
     * The part of the board that blanks at all these places cover, as a blank of its own; its sides may come out below
     * zero. What does not fit beside it fits beside none of them.
     */
    static Common common(List<Placement> places, double w, double h) {
        double degrees = places.getFirst().degrees();
        double cos = Turn.cos(degrees);
        double sin = Turn.sin(degrees);
        double lowX = Double.POSITIVE_INFINITY;
        double highX = Double.NEGATIVE_INFINITY;
        double lowY = Double.POSITIVE_INFINITY;
        double highY = Double.NEGATIVE_INFINITY;
        for (Placement place : places) {
            double x = place.x() * cos + place.y() * sin;
            double y = place.y() * cos - place.x() * sin;
            lowX = Math.min(lowX, x);
            highX = Math.max(highX, x);
            lowY = Math.min(lowY, y);
            highY = Math.max(highY, y);
        }
        return new Common(
                new Placement(highX * cos - highY * sin, highX * sin + highY * cos, degrees),
                w - (highX - lowX),
                h - (highY - lowY));
    }

    record Common(Placement place, double w, double h) {

        boolean isThere() {
            return w > 1 && h > 1;
        }
    }
}
