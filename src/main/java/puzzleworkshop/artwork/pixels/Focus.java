package puzzleworkshop.artwork.pixels;

import java.util.Arrays;
import java.util.OptionalDouble;
import puzzleworkshop.artwork.rows.RowTaker;

/**
 * How much of a picture's resolution is real detail, measured while its rows pass by.
 *
 * <p>In a focused picture neighbouring pixels can differ about as much as places farther apart do: an edge is as steep at
 * full size as in copies of a half, a quarter, … of the size. In a picture that is blurred or was enlarged n times it is
 * about n times less steep. So the steepest step between neighbours is taken in each tile, at full size and in five halved
 * copies (a gradient measure as used in autofocus; cf. Pech-Pacheco et al. 2000, from memory); of the tiles the sharpest
 * few speak for the picture, so that a soft background behind a sharp face does no harm. The ratio of full size to the
 * steepest copy is turned into a share by what pictures enlarged 2, 4, 8 and 16 times give (see the test). A hint, not a
 * verdict.
 */
public final class Focus implements RowTaker {

    /** From this ratio on nothing is missing: cameras soften edges by a pixel or two themselves. */
    private static final double FOCUSED = 0.6;
    /** Enlarged four times, smoothly. */
    private static final double QUARTER = 0.36;

    private static final int OCTAVES = 6;
    private static final int BAND_ROWS = 128;
    private static final int MOST_BANDS = 12;
    private static final int TILE = 64;
    /** Steps below which there is nothing to measure, of 255. */
    private static final double NOTHING = 8;
    /** The largest step that noise makes in a tile of a clean camera file, of 255; halves with each copy. */
    private static final double MOST_NOISE = 12;
    /** Of a hundred tiles, how many stay below the ones that speak. */
    private static final int SHARPEST = 97;

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
        double full = 0;
        double steepest = 0;
        int known = 0;
        for (int k = 0; k < OCTAVES && tiles[k] > 0; k++) {
            double[] sorted = Arrays.copyOf(octaves[k], tiles[k]);
            Arrays.sort(sorted);
            double sharp = sorted[sorted.length * SHARPEST / 100];
            double noise = Math.min(sorted[sorted.length / 10], MOST_NOISE / (1 << k));
            double step = Math.sqrt(Math.max(0, sharp * sharp - noise * noise));
            full = k == 0 ? step : full;
            steepest = Math.max(steepest, step);
            known = k + 1;
        }
        if (known < 3 || steepest < NOTHING) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Math.max(1.0 / 64, shareOf(full / steepest)));
    }

    private static double shareOf(double ratio) {
        if (ratio >= FOCUSED) {
            return 1;
        }
        if (ratio <= QUARTER) {
            return 0.25 * ratio / QUARTER;
        }
        return 0.25 * Math.pow(4, Math.log(ratio / QUARTER) / Math.log(FOCUSED / QUARTER));
    }

    private void measureBand() {
        int w = width;
        int h = inBand;
        inBand = 0;
        float[] level = band;
        for (int k = 0; k < OCTAVES && w >= 2 && h >= 2; k++) {
            // A tile covers the same part of the picture in every copy, down to some pixels of the copy.
            measureSteps(k, level, w, h, Math.max(4, TILE >> k));
            level = halved(level, w, h);
            w /= 2;
            h /= 2;
        }
    }

    private void measureSteps(int k, float[] level, int w, int h, int tile) {
        for (int tileY = 0; tileY < h - 1; tileY += tile) {
            for (int tileX = 0; tileX < w - 1; tileX += tile) {
                float steepest = 0;
                for (int y = tileY; y < Math.min(h - 1, tileY + tile); y++) {
                    for (int x = tileX; x < Math.min(w - 1, tileX + tile); x++) {
                        float here = level[y * w + x];
                        float across = Math.abs(level[y * w + x + 1] - here);
                        float down = Math.abs(level[(y + 1) * w + x] - here);
                        steepest = Math.max(steepest, Math.max(across, down));
                    }
                }
                add(k, steepest);
            }
        }
    }

    private static float[] halved(float[] level, int w, int h) {
        int halfWidth = w / 2;
        float[] half = new float[halfWidth * (h / 2)];
        for (int y = 0; y < h / 2; y++) {
            for (int x = 0; x < halfWidth; x++) {
                int at = 2 * y * w + 2 * x;
                half[y * halfWidth + x] = (level[at] + level[at + 1] + level[at + w] + level[at + w + 1]) / 4;
            }
        }
        return half;
    }

    private void add(int k, double contrast) {
        if (tiles[k] == octaves[k].length) {
            octaves[k] = Arrays.copyOf(octaves[k], tiles[k] * 2);
        }
        octaves[k][tiles[k]++] = contrast;
    }
}
