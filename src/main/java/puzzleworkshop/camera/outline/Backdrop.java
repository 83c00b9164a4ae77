package puzzleworkshop.camera.outline;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * What lies beneath the boards, by colour: white paper at (0, 0, 0), a table or cloth by a few clusters read off its cells near the
 * sheet. Colours are the logarithm of light against white paper there: level (mean), red less blue, red less green. A shadow lowers
 * the level and hardly moves the rest.
 */
final class Backdrop {

    /** Mean and spread of each of the three. */
    record Cluster(double[] mean, double[] spread) {}

    static final Cluster PAPER = new Cluster(new double[] {0, 0, 0}, new double[] {0.045, 0.03, 0.03});

    final List<Cluster> table;

    private Backdrop(List<Cluster> table) {
        this.table = table;
    }

    /** @param colours of cells of the table, thinned out; may be empty */
    static Backdrop of(List<float[]> colours) {
        if (colours.size() < 40) {
            return new Backdrop(List.of());
        }
        Random random = new Random(20261129);
        int k = 4;
        double[][] means = new double[k][];
        for (int i = 0; i < k; i++) {
            float[] pick = colours.get(random.nextInt(colours.size()));
            means[i] = new double[] {pick[0], pick[1], pick[2]};
        }
        int[] of = new int[colours.size()];
        for (int round = 0; round < 15; round++) {
            double[][] sums = new double[k][4];
            for (int i = 0; i < of.length; i++) {
                float[] c = colours.get(i);
                double nearest = Double.MAX_VALUE;
                for (int j = 0; j < k; j++) {
                    double d = sq((c[0] - means[j][0]) * 0.5) + sq(c[1] - means[j][1]) + sq(c[2] - means[j][2]);
                    if (d < nearest) {
                        nearest = d;
                        of[i] = j;
                    }
                }
                for (int a = 0; a < 3; a++) {
                    sums[of[i]][a] += c[a];
                }
                sums[of[i]][3]++;
            }
            for (int j = 0; j < k; j++) {
                for (int a = 0; a < 3 && sums[j][3] > 0; a++) {
                    means[j][a] = sums[j][a] / sums[j][3];
                }
            }
        }
        List<Cluster> clusters = new ArrayList<>();
        for (int j = 0; j < k; j++) {
            double[] spread = new double[3];
            int n = 0;
            for (int i = 0; i < of.length; i++) {
                if (of[i] == j) {
                    n++;
                    for (int a = 0; a < 3; a++) {
                        spread[a] += sq(colours.get(i)[a] - means[j][a]);
                    }
                }
            }
            // a board that reaches to the edge is the smaller part of what is read there
            if (n >= 0.12 * of.length) {
                for (int a = 0; a < 3; a++) {
                    spread[a] = Math.max(a == 0 ? 0.08 : 0.035, Math.sqrt(spread[a] / n));
                }
                clusters.add(new Cluster(means[j], spread));
            }
        }
        return new Backdrop(clusters);
    }

    private static double sq(double x) {
        return x * x;
    }

    /** How far a colour is from the table in its own spreads, its shadow counted as table. */
    double fromTable(float level, float redBlue, float redGreen) {
        double nearest = 1e3;
        for (Cluster cluster : table) {
            nearest = Math.min(nearest, distance(cluster, level, redBlue, redGreen));
        }
        return nearest;
    }

    static double distance(Cluster cluster, double level, double redBlue, double redGreen) {
        double dl = level - cluster.mean[0];
        // darker is shadow: costs little down to a quarter of the light, and lets the colour drift
        double shade = Math.max(0, -dl);
        double deep = Math.max(0, shade - 1.3);
        double up = Math.max(0, dl) / cluster.spread[0];
        double drift = 1 + 2.2 * shade;
        double a = (redBlue - cluster.mean[1]) / (cluster.spread[1] * drift);
        double b = (redGreen - cluster.mean[2]) / (cluster.spread[2] * drift);
        return Math.sqrt(up * up + a * a + b * b + sq(deep / 0.25));
    }
}
