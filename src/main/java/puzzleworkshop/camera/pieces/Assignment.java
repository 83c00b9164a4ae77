package puzzleworkshop.camera.pieces;

import java.util.Arrays;

/**
 * Each row to one column at the least sum of costs: the Hungarian method with potentials (H. W. Kuhn, The Hungarian method for the
 * assignment problem, Naval Research Logistics Quarterly 2, 1955), in cubic time. No more rows than columns.
 */
final class Assignment {

    private Assignment() {}

    static int[] of(double[][] cost) {
        int rows = cost.length;
        int columns = rows == 0 ? 0 : cost[0].length;
        double[] u = new double[rows + 1];
        double[] v = new double[columns + 1];
        int[] row = new int[columns + 1];
        int[] way = new int[columns + 1];
        for (int i = 1; i <= rows; i++) {
            row[0] = i;
            int at = 0;
            double[] least = new double[columns + 1];
            Arrays.fill(least, Double.MAX_VALUE);
            boolean[] used = new boolean[columns + 1];
            do {
                used[at] = true;
                int from = row[at];
                int next = 0;
                double step = Double.MAX_VALUE;
                for (int j = 1; j <= columns; j++) {
                    if (!used[j]) {
                        double reduced = cost[from - 1][j - 1] - u[from] - v[j];
                        if (reduced < least[j]) {
                            least[j] = reduced;
                            way[j] = at;
                        }
                        if (least[j] < step) {
                            step = least[j];
                            next = j;
                        }
                    }
                }
                for (int j = 0; j <= columns; j++) {
                    if (used[j]) {
                        u[row[j]] += step;
                        v[j] -= step;
                    } else {
                        least[j] -= step;
                    }
                }
                at = next;
            } while (row[at] != 0);
            while (at != 0) {
                int before = way[at];
                row[at] = row[before];
                at = before;
            }
        }
        int[] column = new int[rows];
        for (int j = 1; j <= columns; j++) {
            if (row[j] > 0) {
                column[row[j] - 1] = j - 1;
            }
        }
        return column;
    }
}
