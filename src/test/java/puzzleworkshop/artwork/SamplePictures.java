package puzzleworkshop.artwork;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Ellipse2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import javax.imageio.ImageIO;

/** Pictures drawn by code, and the bytes around them that tests want to choose. */
public final class SamplePictures {

    private SamplePictures() {}

    /** Four quarters: red, green / blue, yellow, as seen. */
    public static BufferedImage quarters(int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        Color[] colours = {Color.RED, Color.GREEN, Color.BLUE, Color.YELLOW};
        for (int i = 0; i < 4; i++) {
            g.setColor(colours[i]);
            g.fillRect(i % 2 * (width / 2), i / 2 * (height / 2), width - width / 2, height - height / 2);
        }
        g.dispose();
        return image;
    }

    /** A scene with contrast in every octave: overlapping discs of all sizes, sizes falling as a power law. */
    public static BufferedImage leaves(int width, int height, long seed) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        Random random = new Random(seed);
        for (int i = 0; i < width * height / 60; i++) {
            double radius = 1.5 / Math.sqrt(random.nextDouble() + 1e-4);
            g.setColor(new Color(random.nextInt(256), random.nextInt(256), random.nextInt(256)));
            g.fill(new Ellipse2D.Double(
                    random.nextDouble() * width - radius,
                    random.nextDouble() * height - radius,
                    2 * radius,
                    2 * radius));
        }
        g.dispose();
        return image;
    }

    public static byte[] encode(BufferedImage image, String format) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            if (!ImageIO.write(image, format, out)) {
                throw new IllegalStateException("No writer for " + format);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** Puts an Exif segment with nothing but an orientation right behind the start of a JPEG (CIPA DC-008, 4.5.4, 4.6). */
    public static byte[] withOrientation(byte[] jpeg, int orientation) {
        byte[] body = {
            'E',
            'x',
            'i',
            'f',
            0,
            0,
            'M',
            'M',
            0,
            42,
            0,
            0,
            0,
            8, // big endian, first directory at 8
            0,
            1, // one entry
            0x01,
            0x12,
            0,
            3,
            0,
            0,
            0,
            1,
            0,
            (byte) orientation,
            0,
            0, // tag 274, SHORT, one value
            0,
            0,
            0,
            0 // no further directory
        };
        return withSegment(jpeg, 0xE1, body);
    }

    public static byte[] withSegment(byte[] jpeg, int marker, byte[] body) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(jpeg, 0, 2);
        out.write(0xFF);
        out.write(marker);
        out.write((body.length + 2) >> 8);
        out.write(body.length + 2);
        out.writeBytes(body);
        out.write(jpeg, 2, jpeg.length - 2);
        return out.toByteArray();
    }

    public static byte[] withProfile(byte[] jpeg, byte[] profile) {
        byte[] head = "ICC_PROFILE\0\u0001\u0001".getBytes(StandardCharsets.ISO_8859_1);
        byte[] body = Arrays.copyOf(head, head.length + profile.length);
        System.arraycopy(profile, 0, body, head.length, profile.length);
        return withSegment(jpeg, 0xE2, body);
    }

    public static Path write(Path folder, String name, byte[] bytes) {
        try {
            return Files.write(folder.resolve(name), bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
