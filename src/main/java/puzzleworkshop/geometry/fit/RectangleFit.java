package puzzleworkshop.geometry.fit;

import java.util.OptionalDouble;

/**
 * Does a rectangle fit in a free area at any angle whatever?
 *
 * <p>Ranges of angles are halved. A rectangle at some angle within ±δ of the middle of a range contains the smaller
 * upright one with sides (w·cos δ − h·sin δ)/cos 2δ and (h·cos δ − w·sin δ)/cos 2δ at that middle; when even this
 * does not fit there (decided exactly by {@link PlaceSearch}), no angle of the range does. A range is given up once the
 * sides lost by shrinking are below the tolerance, so 'does not fit' is proved up to {@value #SHARPNESS} mm.
 */
public final class RectangleFit {

    /** Sides lost by shrinking, in mm, below which a range of angles is not halved further. */
    static final double SHARPNESS = 0.004;

    private final PlaceSearch search = new PlaceSearch();

    /** An angle at which it fits, the given ones first (exact fits lie there); empty when none does. */
    public OptionalDouble angle(Segments border, double w, double h, double[] likely) {
        for (double degrees : likely) {
            Segments seen = border.seenFrom(degrees);
            if (search.any(seen, w, h)) {
                return OptionalDouble.of(degrees);
            }
            if (w != h && search.any(seen, h, w)) {
                return OptionalDouble.of(Turn.within(degrees + 90, 180));
            }
        }
        double period = w == h ? 90 : 180;
        for (int i = 0; i < 8; i++) {
            double found = inRange(border, w, h, period * i / 8, period * (i + 1) / 8);
            if (!Double.isNaN(found)) {
                return OptionalDouble.of(found);
            }
        }
        return OptionalDouble.empty();
    }

    private double inRange(Segments border, double w, double h, double low, double high) {
        double middle = (low + high) / 2;
        double half = (high - low) / 2;
        Segments seen = border.seenFrom(middle);
        double lessW = shrunk(w, h, half);
        double lessH = shrunk(h, w, half);
        if (lessW > 1 && lessH > 1 && !search.any(seen, lessW, lessH)) {
            return Double.NaN;
        }
        if (search.any(seen, w, h)) {
            return middle;
        }
        if (w + h - lessW - lessH < SHARPNESS) {
            return Double.NaN;
        }
        double found = inRange(border, w, h, low, middle);
        return Double.isNaN(found) ? inRange(border, w, h, middle, high) : found;
    }

    /** First side of the rectangle that is inside a × b turned by up to the given degrees; not above zero: none. */
    static double shrunk(double a, double b, double degrees) {
        double turn = Math.toRadians(degrees);
        return (a * Math.cos(turn) - b * Math.sin(turn)) / Math.cos(2 * turn);
    }
}
