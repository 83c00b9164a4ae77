package puzzleworkshop.geometry.align;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import puzzleworkshop.geometry.Point;

/**
 * What the readings of two to four marks say: where the print lies, or what is probably wrong with the readings.
 *
 * <p>A set of readings is believed when the print would have stretched no more than paper can, lies no further turned than
 * a hand lays it, and the squared residuals, in units of the reading error, stay below the 99.9 % point of χ² with 2n − 4
 * degrees of freedom (13.82 for three marks, 18.47 for four; any table). Readings that are not believed are tried again
 * with two of them exchanged, mirrored, in the other unit, and without each of them: the first that is then believed, and
 * alone, names the fault. Two marks leave nothing over, so only stretch and turn can speak; a mirror does not show then.
 *
 * @param verdict what they say
 * @param fit the place as read, also where it is not believed
 * @param concerned marks that the verdict speaks of, from 0; empty for {@link Verdict#PLACED}
 * @param shear with four marks
 */
public record MarkReading(Verdict verdict, SimilarityFit fit, List<Integer> concerned, Optional<ShearCheck> shear) {

    /** What readings can say. */
    public enum Verdict {
        /** They fit each other: the place is known. */
        PLACED,
        /** Two marks were read in each other's place. */
        EXCHANGED,
        /** Left and right, or top and bottom, are mirrored: the direction of an axis is not the one that is set. */
        MIRRORED,
        /** X and Y are exchanged. */
        AXES_EXCHANGED,
        /** Inches were typed for millimetres, or the other way round. */
        OTHER_UNIT,
        /** One mark does not fit the others. */
        ONE_MISREAD,
        /** The print is out of square or stretched one way only, more than the readings' errors can make. */
        OUT_OF_SQUARE,
        /** The marks lie nearer together or wider apart than a print can stretch, or turned as nobody lays a board. */
        IMPOSSIBLE
    }

    /**
     * What is expected of readings.
     *
     * @param reading standard deviation of a reading along an axis, mm; about 0.3 by eye with a pilot dot (common practice)
     * @param mostStretch by how much a print may be longer or shorter than drawn, as a share
     * @param mostTurn how far, in radians, a board may lie turned
     */
    public record Expectation(double reading, double mostStretch, double mostTurn) {

        public static final Expectation USUAL = new Expectation(0.3, 0.01, Math.toRadians(20));
    }

    /** Marks of which no two lie further apart than this fix no angle. */
    public static final double LEAST_APART_MM = 20;

    private static final double[] CHI_SQUARED_999 = {0, 0, Double.POSITIVE_INFINITY, 13.82, 18.47};
    private static final double INCH = 25.4;
    /** By so many deviations the stretch may pass the limit through reading errors alone. */
    private static final double ERRORS = 3.3;

    public MarkReading {
        concerned = List.copyOf(concerned);
    }

    public boolean isPlaced() {
        return verdict == Verdict.PLACED;
    }

    /**
     * @param drawn where the marks are on the print, two of them at least {@link #LEAST_APART_MM} apart, y down
     * @param seen where they were read, in the same order, in millimetres, x to the right and y down
     */
    public static MarkReading of(List<Point> drawn, List<Point> seen, Expectation expected) {
        int n = drawn.size();
        if (n < 2 || n > 4 || seen.size() != n) {
            throw new IllegalArgumentException("Two, three or four marks are read, not " + n);
        }
        if (!fixAnAngle(drawn)) {
            throw new IllegalArgumentException("Marks must lie apart");
        }
        Optional<int[]> together = together(drawn, seen, expected);
        if (together.isPresent()) {
            SimilarityFit none =
                    new SimilarityFit(Similarity.NONE, SimilarityFit.middle(drawn), 1, Collections.nCopies(n, 0.0));
            return new MarkReading(
                    Verdict.IMPOSSIBLE, none, List.of(together.get()[0], together.get()[1]), Optional.empty());
        }
        SimilarityFit fit = SimilarityFit.of(drawn, seen);
        if (believed(fit, expected)) {
            return new MarkReading(Verdict.PLACED, fit, List.of(), shear(drawn, seen, fit, expected));
        }
        Optional<ShearCheck> shear = shear(drawn, seen, fit, expected).filter(s -> explains(s, expected));
        if (shear.isPresent()) {
            return new MarkReading(Verdict.OUT_OF_SQUARE, fit, List.of(), shear);
        }
        return whatIsWrong(drawn, seen, fit, expected);
    }

    /** Whether two of the marks lie far enough apart to say how a print lies turned. */
    public static boolean fixAnAngle(List<Point> drawn) {
        return drawn.stream()
                .anyMatch(one -> drawn.stream().anyMatch(other -> one.distanceTo(other) >= LEAST_APART_MM));
    }

    private static Optional<ShearCheck> shear(
            List<Point> drawn, List<Point> seen, SimilarityFit fit, Expectation expected) {
        return drawn.size() < 4
                ? Optional.empty()
                : Optional.of(ShearCheck.of(drawn, seen, fit.place(), expected.reading()));
    }

    /** Whether a print out of square, by no more than paper can be, accounts for readings that a similarity does not. */
    private static boolean explains(ShearCheck shear, Expectation expected) {
        double most = 2 * expected.mostStretch() + ERRORS * shear.deviation();
        return shear.isReal()
                && Math.abs(shear.uneven()) <= most
                && Math.abs(shear.skew()) <= most
                && shear.squares() / (expected.reading() * expected.reading()) <= CHI_SQUARED_999[3];
    }

    private static MarkReading whatIsWrong(
            List<Point> drawn, List<Point> seen, SimilarityFit fit, Expectation expected) {
        if (fits(drawn, seen, p -> new Point(p.xMm() * INCH, p.yMm() * INCH), expected)
                || fits(drawn, seen, p -> new Point(p.xMm() / INCH, p.yMm() / INCH), expected)) {
            return told(Verdict.OTHER_UNIT, fit);
        }
        int n = drawn.size();
        List<List<Integer>> exchanged = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < i; k++) {
                List<Point> other = new ArrayList<>(seen);
                Collections.swap(other, i, k);
                if (believed(SimilarityFit.of(drawn, other), expected)) {
                    exchanged.add(List.of(k, i));
                }
            }
        }
        if (exchanged.size() == 1) {
            return new MarkReading(Verdict.EXCHANGED, fit, exchanged.getFirst(), Optional.empty());
        }
        if (n > 2) {
            if (fits(drawn, seen, p -> new Point(p.yMm(), p.xMm()), expected)) {
                return told(Verdict.AXES_EXCHANGED, fit);
            }
            if (fits(drawn, seen, p -> new Point(-p.xMm(), p.yMm()), expected)
                    || fits(drawn, seen, p -> new Point(p.xMm(), -p.yMm()), expected)) {
                return told(Verdict.MIRRORED, fit);
            }
            List<Integer> misread = misread(drawn, seen, expected);
            if (misread.size() == 1) {
                return new MarkReading(Verdict.ONE_MISREAD, fit, misread, Optional.empty());
            }
        }
        return told(Verdict.IMPOSSIBLE, fit);
    }

    /** Marks without which the others are believed. */
    private static List<Integer> misread(List<Point> drawn, List<Point> seen, Expectation expected) {
        List<Integer> misread = new ArrayList<>();
        for (int i = 0; i < drawn.size(); i++) {
            List<Point> from = new ArrayList<>(drawn);
            List<Point> to = new ArrayList<>(seen);
            from.remove(i);
            to.remove(i);
            if (believed(SimilarityFit.of(from, to), expected)) {
                misread.add(i);
            }
        }
        return misread;
    }

    private static boolean fits(
            List<Point> drawn, List<Point> seen, UnaryOperator<Point> changed, Expectation expected) {
        return believed(SimilarityFit.of(drawn, seen.stream().map(changed).toList()), expected);
    }

    static boolean believed(SimilarityFit fit, Expectation expected) {
        double chance = ERRORS * expected.reading() / Math.sqrt(fit.spread());
        return Math.abs(fit.place().stretch() - 1) <= expected.mostStretch() + chance
                && Math.abs(fit.place().turn()) <= expected.mostTurn()
                && fit.squares() / (expected.reading() * expected.reading()) <= CHI_SQUARED_999[fit.count()];
    }

    /** Two marks that were drawn apart and read at one place: one of them was typed twice. */
    private static Optional<int[]> together(List<Point> drawn, List<Point> seen, Expectation expected) {
        for (int i = 0; i < seen.size(); i++) {
            for (int k = 0; k < i; k++) {
                double apart = drawn.get(i).distanceTo(drawn.get(k));
                // a quarter of an inch-for-millimetre reading, so that those are told as what they are
                if (seen.get(i).distanceTo(seen.get(k)) < Math.min(4 * expected.reading(), apart / 100)) {
                    return Optional.of(new int[] {k, i});
                }
            }
        }
        return Optional.empty();
    }

    private static MarkReading told(Verdict verdict, SimilarityFit fit) {
        return new MarkReading(verdict, fit, List.of(), Optional.empty());
    }
}
