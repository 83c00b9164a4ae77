package puzzleworkshop.camera.traced;

import java.util.Arrays;

/** A flat thing that stands upright on the plane: where rays meet its top and its walls. Its edges lie sorted in square cells. */
final class Prism {

    private static final double CELL = 3;

    final double thickness;
    final Finish finish;
    private final double[] ring;
    private final double left;
    private final double top;
    private final double right;
    private final double bottom;
    private final int columns;
    private final int rows;
    private final int[][] edges;
    private final boolean[] inside;

    /** @param ring x, y in turn, mm, either way round */
    Prism(double[] ring, double thickness, Finish finish) {
        this.ring = ring;
        this.thickness = thickness;
        this.finish = finish;
        double[] box = {Double.MAX_VALUE, Double.MAX_VALUE, -Double.MAX_VALUE, -Double.MAX_VALUE};
        for (int i = 0; i < ring.length; i += 2) {
            box[0] = Math.min(box[0], ring[i]);
            box[1] = Math.min(box[1], ring[i + 1]);
            box[2] = Math.max(box[2], ring[i]);
            box[3] = Math.max(box[3], ring[i + 1]);
        }
        left = box[0] - CELL;
        top = box[1] - CELL;
        right = box[2];
        bottom = box[3];
        columns = (int) ((right - left) / CELL) + 2;
        rows = (int) ((bottom - top) / CELL) + 2;
        edges = new int[columns * rows][];
        inside = new boolean[columns * rows];
        for (int i = 0; i < ring.length / 2; i++) {
            sort(i);
        }
        for (int cell = 0; cell < inside.length; cell++) {
            inside[cell] = edges[cell] == null
                    && encloses(left + (cell % columns + 0.5) * CELL, top + (cell / columns + 0.5) * CELL);
        }
    }

    private int next(int i) {
        return (i + 1) % (ring.length / 2);
    }

    private void sort(int i) {
        int j = next(i);
        int c1 = column(Math.min(ring[2 * i], ring[2 * j]) - 0.01);
        int c2 = column(Math.max(ring[2 * i], ring[2 * j]) + 0.01);
        int r1 = row(Math.min(ring[2 * i + 1], ring[2 * j + 1]) - 0.01);
        int r2 = row(Math.max(ring[2 * i + 1], ring[2 * j + 1]) + 0.01);
        for (int r = r1; r <= r2; r++) {
            for (int c = c1; c <= c2; c++) {
                int cell = r * columns + c;
                int[] before = edges[cell] == null ? new int[0] : edges[cell];
                edges[cell] = Arrays.copyOf(before, before.length + 1);
                edges[cell][before.length] = i;
            }
        }
    }

    private int column(double x) {
        return Math.clamp((int) Math.floor((x - left) / CELL), 0, columns - 1);
    }

    private int row(double y) {
        return Math.clamp((int) Math.floor((y - top) / CELL), 0, rows - 1);
    }

    /** By crossings of a half line, all edges looked at. */
    private boolean encloses(double x, double y) {
        boolean in = false;
        for (int i = 0; i < ring.length / 2; i++) {
            int j = next(i);
            double y1 = ring[2 * i + 1];
            double y2 = ring[2 * j + 1];
            if (y1 > y != y2 > y && x < ring[2 * i] + (y - y1) / (y2 - y1) * (ring[2 * j] - ring[2 * i])) {
                in = !in;
            }
        }
        return in;
    }

    boolean isUnder(double x, double y) {
        if (x < left || y < top || x > right || y > bottom) {
            return false;
        }
        int cell = row(y) * columns + column(x);
        return edges[cell] == null ? inside[cell] : encloses(x, y);
    }

    /** Whether an edge lies so near that a pixel may see both sides of it. */
    boolean hasEdgeAt(double x, double y) {
        return x >= left
                && y >= top
                && x <= right + CELL
                && y <= bottom + CELL
                && edges[row(y) * columns + column(x)] != null;
    }

    /** Share of the way from one place to another at which an edge is met first; above one where none is. */
    double met(double x1, double y1, double x2, double y2) {
        if (Math.max(x1, x2) < left
                || Math.max(y1, y2) < top
                || Math.min(x1, x2) > right
                || Math.min(y1, y2) > bottom) {
            return 2;
        }
        double first = 2;
        int c1 = column(Math.min(x1, x2));
        int c2 = column(Math.max(x1, x2));
        int r1 = row(Math.min(y1, y2));
        int r2 = row(Math.max(y1, y2));
        for (int r = r1; r <= r2; r++) {
            for (int c = c1; c <= c2; c++) {
                int[] here = edges[r * columns + c];
                for (int k = 0; here != null && k < here.length; k++) {
                    first = Math.min(first, crossing(here[k], x1, y1, x2 - x1, y2 - y1));
                }
            }
        }
        return first;
    }

    private double crossing(int i, double x, double y, double dx, double dy) {
        int j = next(i);
        double ex = ring[2 * j] - ring[2 * i];
        double ey = ring[2 * j + 1] - ring[2 * i + 1];
        double det = dx * ey - dy * ex;
        if (Math.abs(det) < 1e-12) {
            return 2;
        }
        double px = ring[2 * i] - x;
        double py = ring[2 * i + 1] - y;
        double s = (px * ey - py * ex) / det;
        double t = (px * dy - py * dx) / det;
        return s > 1e-9 && s <= 1 && t >= 0 && t <= 1 ? s : 2;
    }
}
