package puzzleworkshop.pattern;

import java.util.Arrays;

/**
 * Distances to one line, in squares of {@value #CELL_MM} mm: what is looked up is never more than half a square's diagonal
 * away from the truth. Beyond its reach it only knows that a place is farther.
 */
final class DistanceChart {

    private static final double CELL_MM = 0.1;
    private static final double WRONG_BY_MM = CELL_MM * Math.sqrt(0.5);

    private final double reach;
    private float[] cells = new float[0];
    private int across;
    private int down;
    private double left;
    private double top;

    DistanceChart(double reachMm) {
        this.reach = reachMm;
    }

    /** @param line x and y in turn */
    void draw(double[] line) {
        double minX = Double.POSITIVE_INFINITY;
        double minY = Double.POSITIVE_INFINITY;
        double maxX = Double.NEGATIVE_INFINITY;
        double maxY = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < line.length; i += 2) {
            minX = Math.min(minX, line[i]);
            maxX = Math.max(maxX, line[i]);
            minY = Math.min(minY, line[i + 1]);
            maxY = Math.max(maxY, line[i + 1]);
        }
        left = minX - reach;
        top = minY - reach;
        across = (int) Math.ceil((maxX - minX + 2 * reach) / CELL_MM);
        down = (int) Math.ceil((maxY - minY + 2 * reach) / CELL_MM);
        if (cells.length < across * down) {
            cells = new float[across * down];
        }
        Arrays.fill(cells, (float) reach);
        for (int i = 0; i + 3 < line.length; i += 2) {
            around(line[i], line[i + 1], line[i + 2], line[i + 3]);
        }
    }

    private void around(double ax, double ay, double bx, double by) {
        int fromX = Math.max(0, (int) ((Math.min(ax, bx) - reach - left) / CELL_MM));
        int toX = Math.min(across - 1, (int) ((Math.max(ax, bx) + reach - left) / CELL_MM));
        int fromY = Math.max(0, (int) ((Math.min(ay, by) - reach - top) / CELL_MM));
        int toY = Math.min(down - 1, (int) ((Math.max(ay, by) + reach - top) / CELL_MM));
        for (int y = fromY; y <= toY; y++) {
            double py = top + (y + 0.5) * CELL_MM;
            for (int x = fromX; x <= toX; x++) {
                float known = cells[y * across + x];
                double square = BruteForceLikeness.toStretch(ax, ay, bx, by, left + (x + 0.5) * CELL_MM, py);
                if (square < known * known) {
                    cells[y * across + x] = (float) Math.sqrt(square);
                }
            }
        }
    }

    /** Whether some point surely lies farther away than this; never true where none does. */
    boolean isFartherThan(double[] points, double mm) {
        return atLeast(points, mm) > mm;
    }

    /** No more than the greatest distance of the points from the line; infinite as soon as it is above what is asked. */
    double atLeast(double[] points, double atMost) {
        double greatest = 0;
        for (int i = 0; i < points.length; i += 2) {
            int x = (int) Math.floor((points[i] - left) / CELL_MM);
            int y = (int) Math.floor((points[i + 1] - top) / CELL_MM);
            double here = x < 0 || y < 0 || x >= across || y >= down ? reach : cells[y * across + x];
            greatest = Math.max(greatest, here - WRONG_BY_MM);
            if (greatest > atMost) {
                return Double.POSITIVE_INFINITY;
            }
        }
        return greatest;
    }
}
