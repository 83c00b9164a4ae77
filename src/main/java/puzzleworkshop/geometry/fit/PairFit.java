package puzzleworkshop.geometry.fit;

import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Segments;
import puzzleworkshop.measure.Size;

/**
 * Proves that two rectangles cannot lie in a free area together, at whatever angles.
 *
 * <p>Branch and bound over where the larger one lies: ranges of its angle as in {@link RectangleFit}, in each the cells of
 * its places. What all places of a cell have in common is taken from the area; when the smaller one then fits nowhere, none
 * of those places will do; else the cell is halved, then the range. Nothing is sampled: 'no' is proved; 'yes' may also mean
 * that the work allowed was used up or that the smallest cells and ranges could not tell.
 */
public final class PairFit {

    private static final double FINEST_DEGREES = 0.8;
    private static final double FINEST_CELL_MM = 4;

    /** Less on each side than any search of places takes for free. */
    private static final double SLACK = 4 * Outline.TOLERANCE;

    private static final int PARTS_OF_A_TURN = 8;

    private final PlaceSearch search = new PlaceSearch();
    private final double longer;
    private final double shorter;
    private final double otherLonger;
    private final double otherShorter;
    private final long most;

    private PairFit(Size large, Size small, long most) {
        longer = large.longerSide().mm() - SLACK;
        shorter = large.shorterSide().mm() - SLACK;
        otherLonger = small.longerSide().mm() - SLACK;
        otherShorter = small.shorterSide().mm() - SLACK;
        this.most = most;
    }

    /** The answer, and how many border pieces were looked at for it (see {@link PlaceSearch#work()}). */
    public record Answer(boolean mayHold, long work) {}

    /**
     * Whether both may lie there, side by side.
     *
     * @param most border pieces that may be looked at
     */
    public static Answer ask(Segments border, Size one, Size other, long most) {
        boolean swapped = one.area().compareTo(other.area()) < 0;
        PairFit fit = new PairFit(swapped ? other : one, swapped ? one : other, most);
        return new Answer(fit.may(border), fit.search.work());
    }

    private boolean may(Segments border) {
        double period = period(longer, shorter);
        for (int i = 0; i < PARTS_OF_A_TURN; i++) {
            if (mayTurned(border, period * i / PARTS_OF_A_TURN, period * (i + 1) / PARTS_OF_A_TURN)) {
                return true;
            }
        }
        return false;
    }

    private static double period(double longer, double shorter) {
        return longer == shorter ? 90 : 180;
    }

    private boolean mayTurned(Segments border, double low, double high) {
        if (search.work() > most) {
            return true;
        }
        double middle = (low + high) / 2;
        double half = (high - low) / 2;
        double w = RectangleFit.shrunk(longer, shorter, half);
        double h = RectangleFit.shrunk(shorter, longer, half);
        if (w > 1 && h > 1) {
            double finest = Math.max(FINEST_CELL_MM, (longer + shorter - w - h) / 2);
            if (!mayUpright(border.seenFrom(middle), w, h, finest)) {
                return false;
            }
        }
        return half <= FINEST_DEGREES || mayTurned(border, low, middle) || mayTurned(border, middle, high);
    }

    private boolean mayUpright(Segments seen, double w, double h, double finest) {
        int corners = search.corners(seen, w, h);
        if (corners == 0) {
            return false;
        }
        double x0 = search.x(0);
        double y0 = search.y(0);
        double x1 = x0;
        double y1 = y0;
        for (int i = 1; i < corners; i++) {
            x0 = Math.min(x0, search.x(i));
            y0 = Math.min(y0, search.y(i));
            x1 = Math.max(x1, search.x(i));
            y1 = Math.max(y1, search.y(i));
        }
        return mayInCell(seen, w, h, x0, y0, x1, y1, finest);
    }

    /** The lower left corner lies in x0…x1, y0…y1. */
    private boolean mayInCell(
            Segments seen, double w, double h, double x0, double y0, double x1, double y1, double finest) {
        if (search.work() > most) {
            return true;
        }
        boolean smallest = Math.max(x1 - x0, y1 - y0) <= finest;
        double coreW = w - (x1 - x0);
        double coreH = h - (y1 - y0);
        if (coreW > 1 && coreH > 1) {
            if (!isInside(seen, x1, y1, x0 + w, y0 + h)
                    || !otherFits(seen.without(new Placement(x1, y1, 0), coreW, coreH))) {
                return false;
            }
        }
        if (smallest) {
            return true;
        }
        if (x1 - x0 >= y1 - y0) {
            double middle = (x0 + x1) / 2;
            return mayInCell(seen, w, h, x0, y0, middle, y1, finest)
                    || mayInCell(seen, w, h, middle, y0, x1, y1, finest);
        }
        double middle = (y0 + y1) / 2;
        return mayInCell(seen, w, h, x0, y0, x1, middle, finest) || mayInCell(seen, w, h, x0, middle, x1, y1, finest);
    }

    private static boolean isInside(Segments seen, double x0, double y0, double x1, double y1) {
        for (int i = 0; i < seen.count; i++) {
            if (seen.meets(i, x0 + SLACK, y0 + SLACK, x1 - SLACK, y1 - SLACK)) {
                return false;
            }
        }
        return seen.contains((x0 + x1) / 2, (y0 + y1) / 2);
    }

    private boolean otherFits(Segments rest) {
        double period = period(otherLonger, otherShorter);
        for (int i = 0; i < PARTS_OF_A_TURN; i++) {
            if (otherFits(rest, period * i / PARTS_OF_A_TURN, period * (i + 1) / PARTS_OF_A_TURN)) {
                return true;
            }
        }
        return false;
    }

    private boolean otherFits(Segments rest, double low, double high) {
        double half = (high - low) / 2;
        double w = RectangleFit.shrunk(otherLonger, otherShorter, half);
        double h = RectangleFit.shrunk(otherShorter, otherLonger, half);
        double middle = (low + high) / 2;
        if (w > 1 && h > 1 && !search.any(rest.seenFrom(middle), w, h)) {
            return false;
        }
        return half <= FINEST_DEGREES || otherFits(rest, low, middle) || otherFits(rest, middle, high);
    }
}
