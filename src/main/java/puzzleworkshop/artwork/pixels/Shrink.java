package puzzleworkshop.artwork.pixels;

import java.util.Arrays;
import puzzleworkshop.artwork.rows.RowTaker;

/**
 * Makes a picture smaller while its rows pass by: every new pixel is the mean of the area it covers, parts of pixels
 * counted by their share. Exact up to rounding to a byte; needs a few rows of memory whatever the picture's height.
 */
public final class Shrink implements RowTaker {

    private final int channels;
    private final int width;
    private final int height;
    private final int newWidth;
    private final int newHeight;
    private final float[] acrossOne;
    private final float[] sum;
    private final float[] next;
    private final byte[] out;
    private int row;

    /** @throws IllegalArgumentException when the new size is larger than the old or not positive */
    public Shrink(int channels, int width, int height, int newWidth, int newHeight) {
        if (newWidth < 1 || newHeight < 1 || newWidth > width || newHeight > height) {
            throw new IllegalArgumentException(width + " × " + height + " to " + newWidth + " × " + newHeight);
        }
        this.channels = channels;
        this.width = width;
        this.height = height;
        this.newWidth = newWidth;
        this.newHeight = newHeight;
        this.acrossOne = new float[newWidth * channels];
        this.sum = new float[newWidth * channels];
        this.next = new float[newWidth * channels];
        this.out = new byte[newWidth * newHeight * channels];
    }

    @Override
    public void row(int y, byte[] samples) {
        if (newWidth == width && newHeight == height) {
            // nothing is made smaller: each pixel is its own mean
            System.arraycopy(samples, 0, out, row++ * sum.length, sum.length);
            return;
        }
        across(samples);
        double scale = (double) newHeight / height;
        // Never above the row that is being summed: rounding may put a row's upper edge a hair into the last one.
        double from = Math.max(row, y * scale);
        double to = (y + 1) * scale;
        double edge = row + 1.0;
        if (to < edge - 1e-9) {
            add(sum, (float) (to - from));
            return;
        }
        add(sum, (float) (edge - from));
        if (to > edge + 1e-9) {
            add(next, (float) (to - edge));
        }
        emit();
    }

    private void across(byte[] samples) {
        double scale = (double) width / newWidth;
        for (int x = 0; x < newWidth; x++) {
            double from = x * scale;
            double to = Math.min(width, (x + 1) * scale);
            int first = (int) from;
            int last = Math.min(width - 1, (int) Math.ceil(to - 1e-9) - 1);
            float headShare = (float) (Math.min(to, first + 1.0) - from);
            float tailShare = last > first ? (float) (to - last) : 0;
            for (int c = 0; c < channels; c++) {
                int whole = 0;
                int at = (first + 1) * channels + c;
                for (int i = first + 1; i < last; i++, at += channels) {
                    whole += samples[at] & 0xFF;
                }
                float total = whole + headShare * (samples[first * channels + c] & 0xFF);
                if (last > first) {
                    total += tailShare * (samples[last * channels + c] & 0xFF);
                }
                acrossOne[x * channels + c] = (float) (total / scale);
            }
        }
    }

    private void add(float[] into, float share) {
        for (int i = 0; i < into.length; i++) {
            into[i] += acrossOne[i] * share;
        }
    }

    private void emit() {
        if (row >= newHeight) {
            return;
        }
        int at = row * sum.length;
        for (int i = 0; i < sum.length; i++) {
            out[at + i] = (byte) Math.clamp(Math.round(sum[i]), 0, 255);
        }
        System.arraycopy(next, 0, sum, 0, sum.length);
        Arrays.fill(next, 0);
        row++;
    }

    /** Channels side by side, row by row, once all rows have passed. */
    public Frame result() {
        if (row < newHeight) {
            emit();
        }
        return new Frame(newWidth, newHeight, channels, out);
    }

    /** A whole small picture shrunk further. */
    public static Frame of(Frame frame, int newWidth, int newHeight) {
        Shrink shrink = new Shrink(frame.channels(), frame.width(), frame.height(), newWidth, newHeight);
        int stride = frame.width() * frame.channels();
        byte[] samples = new byte[stride];
        for (int y = 0; y < frame.height(); y++) {
            System.arraycopy(frame.samples(), y * stride, samples, 0, stride);
            shrink.row(y, samples);
        }
        return shrink.result();
    }
}
