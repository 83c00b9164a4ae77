package puzzleworkshop.artwork.reading;

import java.util.Arrays;
import java.util.OptionalDouble;

/**
 * How much of a picture's resolution is real detail, measured while its rows pass by.
 *
 * <p>Pictures of natural scenes hold about the same contrast in every octave of fineness (amplitude falls as 1/f: Field
 * 1987, Journal of the Optical Society of America A 4(12), from memory). A blurred or enlarged picture lacks the finest
 * octaves. So the contrast of each octave is measured, as the mean square of what is lost when 2 × 2 pixels are averaged
 * (a Haar step; kin to the variance of the Laplacian in autofocus: Pech-Pacheco et al. 2000, from memory), in tiles; the
 * sharper tenth of the tiles speaks for the picture, so that a soft background behind a sharp face does no harm. The
 * answer is the finest octave that still holds {@value #PRESENT} of the strongest one's contrast. A hint, not a verdict.
 */
public final class Focus implements RowTaker {

    private static final double PRESENT = 0.3;
    private static final int OCTAVES = 6;
    private static final int BAND_ROWS = 128;
    private static final int MOST_BANDS = 12;
    private static final int TILE = 64;
    /** Contrast of an octave below which there is nothing to measure, in steps of 255. */
    private static final double NOTHING = 1.2;
    /** Noise of a clean camera file at full resolution, in steps of 255; halves with each octave. */
    private static final double MOST_NOISE = 2.5;

    private final int channels;
    private final int width;
    private final int between;
    private final float[] band;
    private int inBand;
    private final double[][] octaves = new double[OCTAVES][];
    private final int[] tiles = new int[OCTAVES];

    public Focus(int channels, int width, int height) {
        this.channels = channels;
        this.width = width;
        int bands = Math.clamp(height / BAND_ROWS, 1, MOST_BANDS);
        this.between = Math.max(BAND_ROWS, height / bands);
        this.band = new float[width * BAND_ROWS];
        Arrays.setAll(octaves, k -> new double[64]);
    }

    @Override
    public void row(int y, byte[] samples) {
        int within = y % between;
        if (within >= BAND_ROWS) {
            return;
        }
        int green = channels == 3 ? 1 : 0;
        int to = within * width;
        for (int x = 0, from = green; x < width; x++, from += channels) {
            band[to + x] = samples[from] & 0xFF;
        }
        inBand = within + 1;
        if (inBand == BAND_ROWS) {
            measureBand();
        }
    }

    /** The share of detail, (0, 1]; nothing for pictures without any contrast or too small to tell. */
    public OptionalDouble share() {
        if (inBand > 0) {
            measureBand();
        }
        double[] contrast = new double[OCTAVES];
        double strongest = 0;
        int known = 0;
        for (int k = 0; k < OCTAVES && tiles[k] > 0; k++) {
            double[] sorted = Arrays.copyOf(octaves[k], tiles[k]);
            Arrays.sort(sorted);
            double sharp = sorted[Math.min(sorted.length - 1, sorted.length * 9 / 10)];
            double noise = Math.min(sorted[sorted.length / 10], MOST_NOISE / (1 << k));
            contrast[k] = Math.sqrt(Math.max(0, sharp * sharp - noise * noise));
            strongest = Math.max(strongest, contrast[k]);
            known = k + 1;
        }
        if (known < 3 || strongest < NOTHING) {
            return OptionalDouble.empty();
        }
        double before = 0;
        for (int k = 0; k < known; k++) {
            double present = contrast[k] / strongest;
            if (present >= PRESENT) {
                double step = k == 0 ? 0 : k - (present - PRESENT) / Math.max(1e-9, present - before);
                return OptionalDouble.of(Math.pow(2, -Math.max(0, step)));
            }
            before = present;
        }
        return OptionalDouble.of(Math.pow(2, -known));
    }

    private void measureBand() {
        int w = width;
        int h = inBand;
        inBand = 0;
        float[] level = band;
        for (int k = 0; k < OCTAVES && w >= 2 && h >= 2; k++) {
            int halfWidth = w / 2;
            int halfHeight = h / 2;
            float[] half = new float[halfWidth * halfHeight];
            // A tile covers the same part of the picture in every octave, down to two steps of the octave.
            int tile = Math.max(2, TILE / 2 >> k);
            measureOctave(k, level, w, half, halfWidth, halfHeight, tile);
            level = half;
            w = halfWidth;
            h = halfHeight;
        }
    }

    private void measureOctave(int k, float[] level, int w, float[] half, int halfWidth, int halfHeight, int tile) {
        for (int tileY = 0; tileY < halfHeight; tileY += tile) {
            for (int tileX = 0; tileX < halfWidth; tileX += tile) {
                double lost = 0;
                int endY = Math.min(halfHeight, tileY + tile);
                int endX = Math.min(halfWidth, tileX + tile);
                for (int y = tileY; y < endY; y++) {
                    for (int x = tileX; x < endX; x++) {
                        int at = 2 * y * w + 2 * x;
                        float a = level[at];
                        float b = level[at + 1];
                        float c = level[at + w];
                        float d = level[at + w + 1];
                        float mean = (a + b + c + d) / 4;
                        half[y * halfWidth + x] = mean;
                        lost += (a - mean) * (a - mean) + (b - mean) * (b - mean) + (c - mean) * (c - mean) + (d - mean) * (d - mean);
                    }
                }
                add(k, Math.sqrt(lost / (4.0 * (endY - tileY) * (endX - tileX))));
            }
        }
    }

    private void add(int k, double contrast) {
        if (tiles[k] == octaves[k].length) {
            octaves[k] = Arrays.copyOf(octaves[k], tiles[k] * 2);
        }
        octaves[k][tiles[k]++] = contrast;
    }
}
