package puzzleworkshop.geometry.fit;

import java.util.Optional;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Segments;
import puzzleworkshop.geometry.Turn;

/**
 * Does a rectangle fit in a free area at any angle whatever?
 *
 * <p>Ranges of angles are halved. A rectangle at some angle within ±δ of the middle of a range contains the smaller
 * upright one with sides (w·cos δ − h·sin δ)/cos 2δ and (h·cos δ − w·sin δ)/cos 2δ at that middle (see
 * {@link #shrunk} for thin ones); when even this
 * does not fit there (decided exactly by {@link PlaceSearch}), no angle of the range does. A range is given up once the
 * sides lost by shrinking are below the tolerance, so 'does not fit' is proved up to {@value #SHARPNESS} mm.
 */
public final class RectangleFit {

    /** Sides lost by shrinking, in mm, below which a range of angles is not halved further. */
    static final double SHARPNESS = 0.004;

    /** Border pieces looked at (see {@link PlaceSearch#work()}), after which ranges are given up sooner. */
    private static final long MUCH_WORK = 15_000_000;

    private final PlaceSearch search = new PlaceSearch();

    /**
     * A place for it, the given angles tried first (exact fits lie there); empty when it fits at none.
     *
     * @param likely 0 ≤ degrees &lt; 90
     */
    public Optional<Placement> place(Segments border, double w, double h, double[] likely) {
        for (double degrees : likely) {
            Segments seen = border.seenFrom(degrees);
            if (search.any(seen, w, h)) {
                return Optional.of(found(w, h, degrees));
            }
            if (w != h && search.any(seen, h, w)) {
                return Optional.of(lyingAcross(w, h, degrees));
            }
        }
        double period = w == h ? 90 : 180;
        for (int i = 0; i < 8; i++) {
            double found = inRange(border, w, h, period * i / 8, period * (i + 1) / 8);
            if (!Double.isNaN(found)) {
                return Optional.of(found(w, h, found));
            }
        }
        return Optional.empty();
    }

    /** A place at this very angle; empty when it does not fit at it. */
    Optional<Placement> placeAt(Segments border, double w, double h, double degrees) {
        return search.any(border.seenFrom(degrees), w, h) ? Optional.of(found(w, h, degrees)) : Optional.empty();
    }

    /** Where the search found it; a rectangle looks the same after half a turn about its middle. */
    private Placement found(double w, double h, double degrees) {
        double kept = Turn.within(degrees, 180);
        boolean halfTurned = Math.abs(Turn.within(degrees, 360) - kept) > 1;
        return turnedBack(search.x(0) + (halfTurned ? w : 0), search.y(0) + (halfTurned ? h : 0), degrees, kept);
    }

    /** Found with its height along the angle: its width then runs a quarter turn further on, from its right corner. */
    private Placement lyingAcross(double w, double h, double degrees) {
        double kept = Turn.within(degrees + 90, 180);
        boolean halfTurned = Math.abs(Turn.within(degrees + 90, 360) - kept) > 1;
        return turnedBack(search.x(0) + (halfTurned ? 0 : h), search.y(0) + (halfTurned ? w : 0), degrees, kept);
    }

    private static Placement turnedBack(double x, double y, double seenFrom, double degrees) {
        double cos = Turn.cos(seenFrom);
        double sin = Turn.sin(seenFrom);
        return new Placement(x * cos - y * sin, x * sin + y * cos, degrees);
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
        if (w + h - lessW - lessH < sharpness()) {
            return Double.NaN;
        }
        double found = inRange(border, w, h, low, middle);
        return Double.isNaN(found) ? inRange(border, w, h, middle, high) : found;
    }

    /** A round board nearly holds a blank at all angles: then 'does not fit' is proved up to a tenth of a millimetre only. */
    private double sharpness() {
        return search.work() < MUCH_WORK ? SHARPNESS : 25 * SHARPNESS;
    }

    /**
     * First side of an upright rectangle that is inside a × b turned by whatever angle up to the given degrees; not above zero:
     * none. A long thin one is held back where its diagonal lies along a.
     */
    static double shrunk(double a, double b, double degrees) {
        double turn = Math.toRadians(degrees);
        double first = (a * Math.cos(turn) - b * Math.sin(turn)) / Math.cos(2 * turn);
        double second = (b * Math.cos(turn) - a * Math.sin(turn)) / Math.cos(2 * turn);
        boolean diagonalPasses = second > 0 && second < first * Math.tan(turn);
        return diagonalPasses ? Math.min(first, Math.sqrt(a * a - second * second)) : first;
    }
}
