package puzzleworkshop.artwork.pixels;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;

/**
 * A picture small enough to hold: channels side by side, row by row.
 *
 * @param samples {@code width × height × channels} bytes
 */
public record Frame(int width, int height, int channels, byte[] samples) {

    public Frame {
        if (samples.length != width * height * channels) {
            throw new IllegalArgumentException(
                    samples.length + " bytes for " + width + " × " + height + " × " + channels);
        }
    }

    /** A copy that we made ourselves: sRGB, upright. */
    public static Frame of(byte[] ownJpeg) {
        BufferedImage image;
        try {
            image = ImageIO.read(new ByteArrayInputStream(ownJpeg));
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
        return of(image);
    }

    static Frame of(BufferedImage image) {
        int width = image.getWidth();
        int height = image.getHeight();
        if (image.getType() == BufferedImage.TYPE_3BYTE_BGR) {
            // As they are stored, band by band: asked for as colours each pixel goes through the colour model, which
            // took
            // half the time of a small picture.
            return new Frame(width, height, 3, (byte[]) image.getRaster().getDataElements(0, 0, width, height, null));
        }
        byte[] samples = new byte[width * height * 3];
        int to = 0;
        for (int pixel : image.getRGB(0, 0, width, height, null, 0, width)) {
            samples[to++] = (byte) (pixel >> 16);
            samples[to++] = (byte) (pixel >> 8);
            samples[to++] = (byte) pixel;
        }
        return new Frame(width, height, 3, samples);
    }

    /**
     * Stands the picture upright (EXIF 2.3, CIPA DC-008, tag 274).
     *
     * @param orientation 1 to 8
     */
    public Frame upright(int orientation) {
        if (orientation == 1) {
            return this;
        }
        Orientation turn = new Orientation(orientation, width, height);
        byte[] turned = new byte[samples.length];
        int to = 0;
        for (int y = 0; y < turn.uprightHeight(); y++) {
            for (int x = 0; x < turn.uprightWidth(); x++) {
                int from = (turn.storedY(x, y) * width + turn.storedX(x, y)) * channels;
                for (int c = 0; c < channels; c++) {
                    turned[to++] = samples[from + c];
                }
            }
        }
        return new Frame(turn.uprightWidth(), turn.uprightHeight(), channels, turned);
    }
}
