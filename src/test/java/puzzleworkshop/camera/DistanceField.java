package puzzleworkshop.camera;

import java.util.List;

/** Signed distance to the edge of a flat shape with holes, below zero inside, sampled on a raster and read between its points. */
final class DistanceField {

    private static final double STEP = 0.25;

    final double left;
    final double top;
    private final int columns;
    private final int rows;
    private final float[] far;
    private final double margin;

    DistanceField(List<double[]> rings, double margin) {
        this.margin = margin;
        double minX = Double.MAX_VALUE;
        double minY = Double.MAX_VALUE;
        double maxX = -Double.MAX_VALUE;
        double maxY = -Double.MAX_VALUE;
        for (double[] ring : rings) {
            for (int i = 0; i < ring.length; i += 2) {
                minX = Math.min(minX, ring[i]);
                maxX = Math.max(maxX, ring[i]);
                minY = Math.min(minY, ring[i + 1]);
                maxY = Math.max(maxY, ring[i + 1]);
            }
        }
        left = minX - margin;
        top = minY - margin;
        columns = (int) Math.ceil((maxX - minX + 2 * margin) / STEP) + 2;
        rows = (int) Math.ceil((maxY - minY + 2 * margin) / STEP) + 2;
        far = new float[columns * rows];
        java.util.stream.IntStream.range(0, rows).parallel().forEach(r -> {
            for (int c = 0; c < columns; c++) {
                far[r * columns + c] = (float) exact(rings, left + c * STEP, top + r * STEP);
            }
        });
    }

    static double exact(List<double[]> rings, double x, double y) {
        double nearest = Double.MAX_VALUE;
        boolean inside = false;
        for (double[] ring : rings) {
            int n = ring.length / 2;
            for (int i = 0; i < n; i++) {
                int j = (i + 1) % n;
                double ax = ring[2 * i];
                double ay = ring[2 * i + 1];
                double bx = ring[2 * j];
                double by = ring[2 * j + 1];
                double dx = bx - ax;
                double dy = by - ay;
                double t = Math.clamp(((x - ax) * dx + (y - ay) * dy) / Math.max(1e-12, dx * dx + dy * dy), 0, 1);
                double ex = x - ax - t * dx;
                double ey = y - ay - t * dy;
                nearest = Math.min(nearest, ex * ex + ey * ey);
                if (ay > y != by > y && x < (bx - ax) * (y - ay) / (by - ay) + ax) {
                    inside = !inside;
                }
            }
        }
        return inside ? -Math.sqrt(nearest) : Math.sqrt(nearest);
    }

    double at(double x, double y) {
        double c = (x - left) / STEP;
        double r = (y - top) / STEP;
        if (c < 0 || r < 0 || c >= columns - 1 || r >= rows - 1) {
            return margin;
        }
        int i = (int) c;
        int j = (int) r;
        double fx = c - i;
        double fy = r - j;
        int at = j * columns + i;
        return (far[at] * (1 - fx) + far[at + 1] * fx) * (1 - fy)
                + (far[at + columns] * (1 - fx) + far[at + columns + 1] * fx) * fy;
    }

    boolean near(double x, double y) {
        return x > left && y > top && x < left + (columns - 1) * STEP && y < top + (rows - 1) * STEP;
    }
}
