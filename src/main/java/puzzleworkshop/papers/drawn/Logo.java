package puzzleworkshop.papers.drawn;

import java.awt.Graphics2D;
import java.awt.Image;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Iterator;
import java.util.Locale;
import java.util.Set;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.display.fields.ReceivedFile;
import puzzleworkshop.measure.Refused;

/**
 * Makes an uploaded picture the workshop's logo: only PNG and JPEG are taken, whatever their name says, and what is kept
 * is a fresh PNG of a size fit for paper, so that nothing that came along in the file ever reaches a customer.
 */
public final class Logo {

    /** Largest file taken. */
    public static final int MOST_BYTES = 1_000_000;

    /** Read from the head of the file before anything is unpacked: a small file may hold a huge picture. */
    private static final int MOST_SIDE = 4_000;

    /** 150 × 48 pt on paper at 600 ppi. */
    private static final int KEPT_WIDTH = 1_250;

    private static final int KEPT_HEIGHT = 400;
    private static final Set<String> FORMATS = Set.of("png", "jpeg", "jpg");

    private static final long PNG = 0x89504E470D0A1A0AL;
    private static final Set<String> PIXELS = Set.of("IHDR", "PLTE", "tRNS", "IDAT", "IEND");

    private Logo() {}

    /** The same of a file from outside: a JPEG is read with the bounds of all photos from outside. */
    public static byte[] of(ReceivedFile file, Photos photos) throws IOException {
        byte[] content = file.content();
        boolean jpeg = content.length > 2 && content[0] == (byte) 0xFF && content[1] == (byte) 0xD8;
        return of(jpeg ? photos.kept(file.path()) : withPixelsOnly(content));
    }

    /**
     * A PNG (ISO/IEC 15948) without what is no picture: texts and profiles may unpack to gigabytes. What is no PNG comes
     * back as it is.
     */
    static byte[] withPixelsOnly(byte[] file) {
        ByteBuffer in = ByteBuffer.wrap(file);
        if (file.length < 8 || in.getLong() != PNG) {
            return file;
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream(file.length);
        out.write(file, 0, 8);
        while (in.remaining() >= 12) {
            int at = in.position();
            int length = in.getInt();
            String kind = new String(file, at + 4, 4, StandardCharsets.ISO_8859_1);
            if (length < 0 || length > file.length - at - 12) {
                break;
            }
            if (PIXELS.contains(kind)) {
                out.write(file, at, length + 12);
            }
            in.position(at + length + 12);
        }
        return out.toByteArray();
    }

    /** @throws Refused when it is no PNG or JPEG, or too large */
    static byte[] of(byte[] file) {
        if (file.length > MOST_BYTES) {
            throw new Refused("papers.settings.logo");
        }
        try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(file))) {
            Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
            if (!readers.hasNext()) {
                throw new Refused("papers.settings.logo");
            }
            ImageReader reader = readers.next();
            try {
                reader.setInput(in, true, true);
                if (!FORMATS.contains(reader.getFormatName().toLowerCase(Locale.ROOT))) {
                    throw new Refused("papers.settings.logo");
                }
                if (reader.getWidth(0) > MOST_SIDE || reader.getHeight(0) > MOST_SIDE) {
                    throw new Refused("papers.settings.logo.side", MOST_SIDE);
                }
                return png(reader.read(0));
            } finally {
                reader.dispose();
            }
        } catch (Refused said) {
            throw said;
        } catch (IOException | RuntimeException broken) {
            throw new Refused("papers.settings.logo");
        }
    }

    private static byte[] png(BufferedImage picture) throws IOException {
        double shrink = Math.min(
                1, Math.min(KEPT_WIDTH / (double) picture.getWidth(), KEPT_HEIGHT / (double) picture.getHeight()));
        int width = (int) Math.max(1, Math.round(picture.getWidth() * shrink));
        int height = (int) Math.max(1, Math.round(picture.getHeight() * shrink));
        BufferedImage kept = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
        Graphics2D graphics = kept.createGraphics();
        Image scaled = shrink < 1 ? picture.getScaledInstance(width, height, Image.SCALE_AREA_AVERAGING) : picture;
        graphics.drawImage(scaled, 0, 0, null);
        graphics.dispose();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(kept, "png", out);
        return out.toByteArray();
    }
}
