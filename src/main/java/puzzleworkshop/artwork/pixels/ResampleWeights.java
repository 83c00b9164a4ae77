package puzzleworkshop.artwork.pixels;

import java.util.Arrays;

/**
 * In one direction: which pixels of the picture make each new pixel, with which shares. Beyond the picture's end the
 * pixels are folded back or the last one is drawn on (fill), or the border begins (fit).
 */
final class ResampleWeights {

    private final int count;
    private final int[] starts;
    private int[] indices = new int[1024];
    private float[] weights = new float[1024];
    private final float[] insides;
    private int used;

    private ResampleWeights(int count) {
        this.count = count;
        this.starts = new int[count + 1];
        this.insides = new float[count];
    }

    /**
     * @param from where the frame begins, in fractions of the picture
     * @param share of the picture that the frame takes
     * @param pixels of the picture in this direction
     * @param framed new pixels of the frame
     * @param overhang new pixels beyond the frame on either side
     */
    static ResampleWeights of(double from, double share, int pixels, int framed, int overhang, Crop crop) {
        ResampleWeights taps = new ResampleWeights(framed + 2 * overhang);
        double begin = from * pixels;
        double step = share * pixels / framed;
        double reach = Math.max(1, step);
        double end = begin + share * pixels;
        for (int i = 0; i < taps.count; i++) {
            double middle = begin + (i - overhang + 0.5) * step;
            taps.starts[i] = taps.used;
            double low = middle - reach / 2;
            double high = middle + reach / 2;
            for (int p = (int) Math.floor(low); p < high - 1e-9; p++) {
                double part = Math.min(high, p + 1.0) - Math.max(low, p);
                int at = place(p, pixels, begin, end, i < overhang || i >= overhang + framed, crop);
                if (at >= 0 && part > 1e-9) {
                    taps.add(at, (float) (part / reach), i);
                }
            }
        }
        taps.starts[taps.count] = taps.used;
        return taps;
    }

    /** The pixel shown at a place, or −1 for border. */
    private static int place(int p, int pixels, double begin, double end, boolean inOverhang, Crop crop) {
        if (p >= 0 && p < pixels) {
            return p;
        }
        if (crop.fit() == Crop.Fit.FIT) {
            // Only where the picture itself reaches the frame's edge is it folded out over it, else the border goes on.
            int folded = (int) Math.floor(p < begin ? 2 * begin - p - 1 : 2 * end - p - 1);
            boolean beyond = inOverhang && (p + 1 <= begin + 0.5 || p >= end - 0.5);
            return beyond && folded >= 0 && folded < pixels ? folded : -1;
        }
        int folded = p < 0 ? -p - 1 : 2 * pixels - 1 - p;
        int wanted = crop.edge() == Crop.Edge.MIRRORED ? folded : p;
        return Math.clamp(wanted, 0, pixels - 1);
    }

    private void add(int index, float weight, int i) {
        if (used == indices.length) {
            indices = Arrays.copyOf(indices, used * 2);
            weights = Arrays.copyOf(weights, used * 2);
        }
        indices[used] = index;
        weights[used++] = weight;
        insides[i] += weight;
    }

    int count() {
        return count;
    }

    int start(int i) {
        return starts[i];
    }

    int index(int tap) {
        return indices[tap];
    }

    float weight(int tap) {
        return weights[tap];
    }

    /** Which share of the new pixel lies inside the picture, 0 to 1. */
    float inside(int i) {
        return Math.min(1, insides[i]);
    }

    int widest() {
        int most = 0;
        for (int i = 0; i < count; i++) {
            most = Math.max(most, starts[i + 1] - starts[i]);
        }
        return most;
    }
}
