package puzzleworkshop.geometry.path;

import puzzleworkshop.geometry.Point;

/** The arithmetic of one cubic Bézier curve, coordinate by coordinate, and its length. */
final class CubicMath {

    /** Gauss–Legendre nodes and weights of order 8 on [-1, 1] (Abramowitz and Stegun, table 25.4). */
    private static final double[] NODE = {0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363
    };

    private static final double[] WEIGHT = {
        0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763
    };
    private static final int DEEPEST_HALVING = 24;

    private CubicMath() {}

    static double value(double p0, double p1, double p2, double p3, double t) {
        double u = 1 - t;
        return u * u * u * p0 + 3 * u * u * t * p1 + 3 * u * t * t * p2 + t * t * t * p3;
    }

    static double slope(double p0, double p1, double p2, double p3, double t) {
        double u = 1 - t;
        return 3 * (u * u * (p1 - p0) + 2 * u * t * (p2 - p1) + t * t * (p3 - p2));
    }

    static double bend(double p0, double p1, double p2, double p3, double t) {
        return 6 * ((1 - t) * (p2 - 2 * p1 + p0) + t * (p3 - 2 * p2 + p1));
    }

    /** Smallest and largest value on [0, 1]: the ends and wherever the slope is zero. */
    static double[] range(double p0, double p1, double p2, double p3) {
        double[] range = {Math.min(p0, p3), Math.max(p0, p3)};
        if (p1 >= range[0] && p1 <= range[1] && p2 >= range[0] && p2 <= range[1]) {
            return range; // the curve never leaves the hull of its four points
        }
        double a = p3 - 3 * p2 + 3 * p1 - p0;
        double b = 2 * (p2 - 2 * p1 + p0);
        double c = p1 - p0;
        double discriminant = b * b - 4 * a * c;
        if (discriminant < 0) {
            return range;
        }
        // the stable pair of roots; a division by zero gives no number in [0, 1] and is skipped
        double q = -0.5 * (b + Math.copySign(Math.sqrt(discriminant), b));
        for (double t : new double[] {q / a, c / q}) {
            if (t > 0 && t < 1) {
                double extreme = value(p0, p1, p2, p3, t);
                range[0] = Math.min(range[0], extreme);
                range[1] = Math.max(range[1], extreme);
            }
        }
        return range;
    }

    /**
     * Arc length by Gauss–Legendre of order 8 over [0, 1], halved wherever the two halves together differ from the
     * whole by more than 1e-10 of the hull's length (cusps end at the deepest halving, 6e-8 of the parameter).
     */
    static double length(Point from, Segment.Cubic c) {
        double hull = from.distanceTo(c.control1())
                + c.control1().distanceTo(c.control2())
                + c.control2().distanceTo(c.to());
        if (hull == 0) {
            return 0;
        }
        return refine(from, c, 0, 1, stretch(from, c, 0, 1), hull * 1e-10, 0);
    }

    private static double refine(
            Point p, Segment.Cubic c, double a, double b, double whole, double allowed, int depth) {
        double middle = (a + b) / 2;
        double left = stretch(p, c, a, middle);
        double right = stretch(p, c, middle, b);
        if (Math.abs(left + right - whole) <= allowed || depth == DEEPEST_HALVING) {
            return left + right;
        }
        return refine(p, c, a, middle, left, allowed / 2, depth + 1)
                + refine(p, c, middle, b, right, allowed / 2, depth + 1);
    }

    private static double stretch(Point p, Segment.Cubic c, double a, double b) {
        double half = (b - a) / 2;
        double middle = (a + b) / 2;
        double sum = 0;
        for (int i = 0; i < NODE.length; i++) {
            sum += WEIGHT[i] * (speed(p, c, middle - half * NODE[i]) + speed(p, c, middle + half * NODE[i]));
        }
        return sum * half;
    }

    /** Twice the area swept by the ray from a fixed point along one stretch. */
    static double sweep(Point origin, Point from, Segment segment) {
        double sum = 0;
        for (int i = 0; i < NODE.length; i++) {
            for (int sign = -1; sign <= 1; sign += 2) {
                double t = (1 + sign * NODE[i]) / 2;
                Point p = segment.at(from, t);
                double[] v = segment.velocity(from, t);
                sum += WEIGHT[i] / 2 * ((p.xMm() - origin.xMm()) * v[1] - (p.yMm() - origin.yMm()) * v[0]);
            }
        }
        return sum;
    }

    private static double speed(Point p, Segment.Cubic c, double t) {
        double x = slope(p.xMm(), c.control1().xMm(), c.control2().xMm(), c.to().xMm(), t);
        double y = slope(p.yMm(), c.control1().yMm(), c.control2().yMm(), c.to().yMm(), t);
        return Math.sqrt(x * x + y * y);
    }

    /**
     * Into how many equal steps of t a curve must be divided so that its chords stay within the tolerance: the square
     * root of 3/4 of the largest second difference of the control points over the tolerance (Wang, Shyue, Hsu and
     * Chou 1984). A bound, never an estimate.
     */
    static int steps(Point from, Segment.Cubic c, double toleranceMm) {
        double first = secondDifference(from, c.control1(), c.control2());
        double second = secondDifference(c.control1(), c.control2(), c.to());
        double steps = Math.ceil(Math.sqrt(0.75 * Math.max(first, second) / toleranceMm));
        return (int) Math.max(1, Math.min(steps, 1 << 20));
    }

    private static double secondDifference(Point a, Point b, Point c) {
        double x = a.xMm() - 2 * b.xMm() + c.xMm();
        double y = a.yMm() - 2 * b.yMm() + c.yMm();
        return Math.sqrt(x * x + y * y);
    }
}
