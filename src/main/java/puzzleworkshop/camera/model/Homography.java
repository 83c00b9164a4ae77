package puzzleworkshop.camera.model;

import org.ejml.simple.SimpleMatrix;
import org.ejml.simple.SimpleSVD;

/**
 * A map from plane to plane that keeps lines straight: (x, y) goes to ((h₀x + h₁y + h₂)/w, (h₃x + h₄y + h₅)/w) with
 * w = h₆x + h₇y + h₈. Found from four or more pairs by the direct linear transformation with normalised coordinates (Hartley and
 * Zisserman, Multiple View Geometry in Computer Vision, 2nd edition 2004, algorithm 4.2); for four pairs it is the map of P. S.
 * Heckbert, Fundamentals of Texture Mapping and Image Warping (1989).
 *
 * @param h nine numbers, the last one 1 unless it vanishes
 */
public record Homography(double[] h) {

    /** @param from x, y of each point in turn; to likewise; at least four pairs, no three of four on a line */
    public static Homography between(double[] from, double[] to) {
        int pairs = from.length / 2;
        if (pairs < 4 || from.length != to.length) {
            throw new IllegalArgumentException("A homography needs four pairs or more, not " + pairs);
        }
        double[] a = normaliser(from);
        double[] b = normaliser(to);
        SimpleMatrix rows = new SimpleMatrix(Math.max(9, 2 * pairs), 9);
        for (int i = 0; i < pairs; i++) {
            double x = a[0] * from[2 * i] + a[1];
            double y = a[0] * from[2 * i + 1] + a[2];
            double u = b[0] * to[2 * i] + b[1];
            double v = b[0] * to[2 * i + 1] + b[2];
            rows.setRow(2 * i, 0, x, y, 1, 0, 0, 0, -u * x, -u * y, -u);
            rows.setRow(2 * i + 1, 0, 0, 0, 0, x, y, 1, -v * x, -v * y, -v);
        }
        SimpleSVD<SimpleMatrix> parts = rows.svd(true);
        int last = 0;
        for (int i = 1; i < 9; i++) {
            last = parts.getSingleValue(i) < parts.getSingleValue(last) ? i : last;
        }
        SimpleMatrix normal = new SimpleMatrix(3, 3);
        for (int i = 0; i < 9; i++) {
            normal.set(i / 3, i % 3, parts.getV().get(i, last));
        }
        SimpleMatrix back =
                new SimpleMatrix(new double[][] {{1 / b[0], 0, -b[1] / b[0]}, {0, 1 / b[0], -b[2] / b[0]}, {0, 0, 1}});
        SimpleMatrix there = new SimpleMatrix(new double[][] {{a[0], 0, a[1]}, {0, a[0], a[2]}, {0, 0, 1}});
        SimpleMatrix map = back.mult(normal).mult(there);
        double scale = Math.abs(map.get(2, 2)) > 1e-12 ? map.get(2, 2) : map.normF();
        double[] h = new double[9];
        for (int i = 0; i < 9; i++) {
            h[i] = map.get(i / 3, i % 3) / scale;
        }
        return new Homography(h);
    }

    /** Scale and shift that put points around zero at a mean distance of √2. */
    private static double[] normaliser(double[] points) {
        int n = points.length / 2;
        double mx = 0;
        double my = 0;
        for (int i = 0; i < n; i++) {
            mx += points[2 * i] / n;
            my += points[2 * i + 1] / n;
        }
        double far = 0;
        for (int i = 0; i < n; i++) {
            far += Math.hypot(points[2 * i] - mx, points[2 * i + 1] - my) / n;
        }
        double scale = Math.sqrt(2) / far;
        return new double[] {scale, -scale * mx, -scale * my};
    }

    public void map(double x, double y, double[] out) {
        double w = h[6] * x + h[7] * y + h[8];
        double u = (h[0] * x + h[1] * y + h[2]) / w;
        out[1] = (h[3] * x + h[4] * y + h[5]) / w;
        out[0] = u;
    }

    public Homography inverse() {
        SimpleMatrix map =
                new SimpleMatrix(new double[][] {{h[0], h[1], h[2]}, {h[3], h[4], h[5]}, {h[6], h[7], h[8]}});
        SimpleMatrix back = map.invert();
        double scale = Math.abs(back.get(2, 2)) > 1e-12 ? back.get(2, 2) : back.normF();
        double[] inverse = new double[9];
        for (int i = 0; i < 9; i++) {
            inverse[i] = back.get(i / 3, i % 3) / scale;
        }
        return new Homography(inverse);
    }
}
