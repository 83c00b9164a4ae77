package puzzleworkshop.camera.pieces;

import java.util.Arrays;

/** Points along a piece's edge at even distances, with their outward normals. */
final class PlaceEdge {

    static final int POINTS = 144;

    /** Its direction is read between two places so far before and after it, mm. */
    private static final double ALONG = 0.4;

    final double[] x = new double[POINTS];
    final double[] y = new double[POINTS];
    final double[] nx = new double[POINTS];
    final double[] ny = new double[POINTS];
    final double[] ring;

    PlaceEdge(double[] ring) {
        this.ring = ring;
        int n = ring.length / 2;
        double[] at = new double[n + 1];
        for (int i = 0; i < n; i++) {
            int j = (i + 1) % n;
            at[i + 1] = at[i] + Math.hypot(ring[2 * j] - ring[2 * i], ring[2 * j + 1] - ring[2 * i + 1]);
        }
        double[] p = new double[2];
        double[] q = new double[2];
        for (int k = 0; k < POINTS; k++) {
            double wanted = at[n] * k / POINTS;
            point(at, wanted, p);
            x[k] = p[0];
            y[k] = p[1];
            point(at, wanted - ALONG, p);
            point(at, wanted + ALONG, q);
            double d = Math.max(1e-9, Math.hypot(q[0] - p[0], q[1] - p[1]));
            nx[k] = (q[1] - p[1]) / d;
            ny[k] = (p[0] - q[0]) / d;
        }
    }

    /** Its farthest point from its origin, mm. */
    double reach() {
        double farthest = 0;
        for (int i = 0; i < POINTS; i++) {
            farthest = Math.max(farthest, Math.hypot(x[i], y[i]));
        }
        return farthest;
    }

    private void point(double[] at, double wanted, double[] out) {
        int n = at.length - 1;
        double way = (wanted % at[n] + at[n]) % at[n];
        int i = Arrays.binarySearch(at, way);
        i = Math.min(n - 1, i < 0 ? -i - 2 : i);
        double share = (way - at[i]) / Math.max(1e-9, at[i + 1] - at[i]);
        int j = (i + 1) % n;
        out[0] = ring[2 * i] + share * (ring[2 * j] - ring[2 * i]);
        out[1] = ring[2 * i + 1] + share * (ring[2 * j + 1] - ring[2 * i + 1]);
    }
}
