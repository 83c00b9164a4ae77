package puzzleworkshop.camera.rings;

import java.util.Arrays;

/**
 * What was read at the points of a ring, taken together along a stretch. Only points whose normals are alike count: around a corner
 * each stands for itself.
 */
public final class Stretch {

    private final double[] normals;
    private final double alike;
    private final int size;

    /**
     * @param normals of the ring, unit vectors as x, y in turn
     * @param alike cosine of the widest angle between two normals of one stretch
     */
    public Stretch(double[] normals, double alike) {
        this.normals = normals;
        this.alike = alike;
        this.size = normals.length / 2;
    }

    /** Whether a point some points on from another belongs to the same stretch. */
    public boolean has(int i, int on) {
        int j = index(i, on);
        return on == 0 || normals[2 * i] * normals[2 * j] + normals[2 * i + 1] * normals[2 * j + 1] > alike;
    }

    public int index(int i, int on) {
        return Math.floorMod(i + on, size);
    }

    /** Mean of the cuts around a point, the nearer ones weighing more, sample by sample. */
    public double[] mean(double[][] cuts, int i, int together) {
        double[] mean = new double[cuts[i].length];
        double weights = 0;
        for (int on = -together; on <= together; on++) {
            double weight = has(i, on) ? together + 1.0 - Math.abs(on) : 0;
            double[] cut = cuts[index(i, on)];
            for (int s = 0; s < mean.length && weight > 0; s++) {
                mean[s] += cut[s] * weight;
            }
            weights += weight;
        }
        for (int s = 0; s < mean.length; s++) {
            mean[s] /= weights;
        }
        return mean;
    }

    /** Mean of one sample of the cuts around a point that have it; not a number where half of them or fewer have. */
    public double mean(double[][] cuts, int sample, int i, int together) {
        double sum = 0;
        int count = 0;
        for (int on = -together; on <= together; on++) {
            double value = cuts[index(i, on)][sample];
            if (Double.isFinite(value) && has(i, on)) {
                sum += value;
                count++;
            }
        }
        return count > together ? sum / count : Double.NaN;
    }

    /** Median of the values around a point that are there; not a number where they are fewer than asked for. */
    public double median(double[] values, int i, int wide, int fewest) {
        double[] around = new double[2 * wide + 1];
        int count = 0;
        for (int on = -wide; on <= wide; on++) {
            double value = values[index(i, on)];
            if (Double.isFinite(value) && has(i, on)) {
                around[count++] = value;
            }
        }
        Arrays.sort(around, 0, count);
        return count < fewest ? Double.NaN : around[count / 2];
    }
}
