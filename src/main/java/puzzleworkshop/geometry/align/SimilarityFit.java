package puzzleworkshop.geometry.align;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.geometry.Point;

/**
 * The {@link Similarity} that brings drawn points nearest to where they were seen, by least squares.
 *
 * <p>Method: S. Umeyama, Least-squares estimation of transformation parameters between two point patterns, IEEE
 * Transactions on Pattern Analysis and Machine Intelligence 13(4), 1991. In the plane, mirrors left out, his solution is
 * one complex division: with both sets about their middles, a + i·b = Σ conj(p)·q / Σ |p|².
 *
 * <p>How sure: the four numbers enter linearly, so with readings that are off by a standard deviation σ along each axis,
 * each for itself, the place of a drawn point at the distance d from the middle of the marks is off by
 * σ·√(1/n + d²/S) along each axis, S = Σ |p|² (linear regression, any textbook of it).
 *
 * @param place shift, turn and stretch
 * @param middle of the drawn points
 * @param spread Σ of their squared distances from it, mm²
 * @param residuals for each point, in mm, how far it was seen from where the place puts it
 */
public record SimilarityFit(Similarity place, Point middle, double spread, List<Double> residuals) {

    public SimilarityFit {
        residuals = List.copyOf(residuals);
    }

    /**
     * @param drawn at least two different points
     * @param seen the same number
     */
    public static SimilarityFit of(List<Point> drawn, List<Point> seen) {
        int n = drawn.size();
        if (n < 2 || seen.size() != n) {
            throw new IllegalArgumentException("A place is found from two points or more, each drawn and seen");
        }
        Point from = middle(drawn);
        Point to = middle(seen);
        double along = 0;
        double across = 0;
        double spread = 0;
        for (int i = 0; i < n; i++) {
            double px = drawn.get(i).xMm() - from.xMm();
            double py = drawn.get(i).yMm() - from.yMm();
            double qx = seen.get(i).xMm() - to.xMm();
            double qy = seen.get(i).yMm() - to.yMm();
            along += px * qx + py * qy;
            across += px * qy - py * qx;
            spread += px * px + py * py;
        }
        if (!(spread > 0)) {
            throw new IllegalArgumentException("All drawn points are the same");
        }
        double a = along / spread;
        double b = across / spread;
        if (a == 0 && b == 0) {
            throw new IllegalArgumentException("All seen points are the same");
        }
        Similarity place = new Similarity(
                a, b, to.xMm() - a * from.xMm() + b * from.yMm(), to.yMm() - b * from.xMm() - a * from.yMm());
        List<Double> residuals = new ArrayList<>(n);
        for (int i = 0; i < n; i++) {
            residuals.add(place.of(drawn.get(i)).distanceTo(seen.get(i)));
        }
        return new SimilarityFit(place, from, spread, residuals);
    }

    public int count() {
        return residuals.size();
    }

    /** Σ of the squared residuals, mm². */
    public double squares() {
        return residuals.stream().mapToDouble(r -> r * r).sum();
    }

    /**
     * Standard deviation, along each axis, of where a drawn point lies.
     *
     * @param reading standard deviation of a reading along an axis, mm
     */
    public double deviationAt(Point drawn, double reading) {
        double d = middle.distanceTo(drawn);
        return reading * Math.sqrt(1.0 / count() + d * d / spread);
    }

    /**
     * Radius in mm of the circle in which a drawn point truly lies with the given probability: the error is normal and
     * alike along both axes, so its length follows Rayleigh's distribution and the radius is deviation·√(−2·ln(1−p)).
     */
    public double radiusAt(Point drawn, double reading, double probability) {
        return deviationAt(drawn, reading) * Math.sqrt(-2 * Math.log(1 - probability));
    }

    static Point middle(List<Point> points) {
        double x = 0;
        double y = 0;
        for (Point p : points) {
            x += p.xMm();
            y += p.yMm();
        }
        return new Point(x / points.size(), y / points.size());
    }
}
