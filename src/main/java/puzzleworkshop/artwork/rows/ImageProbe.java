package puzzleworkshop.artwork.rows;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.artwork.reading.FileSignature;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.artwork.reading.JpegHead;
import puzzleworkshop.artwork.reading.PngHead;
import puzzleworkshop.artwork.reading.TiffHead;
import puzzleworkshop.artwork.reading.WebpHead;
import puzzleworkshop.measure.Refused;

/** Tells what a file is by its content and judges its size from the header; nothing is decoded yet. */
public final class ImageProbe {

    private static final Logger LOG = LoggerFactory.getLogger(ImageProbe.class);

    private ImageProbe() {}

    /**
     * @throws Refused when it is no picture we print from, too large, empty or cut short; the sentence says what to send
     */
    public static ImageHeader at(Path file, IntakeLimits limits) throws IOException {
        long length = Files.size(file);
        if (length == 0) {
            throw new Refused("artwork.refused.empty");
        }
        if (length > limits.bytes()) {
            throw new Refused("artwork.refused.too-many-bytes", megabytes(length), megabytes(limits.bytes()));
        }
        ImageHeader facts;
        try (RandomAccessFile in = new RandomAccessFile(file.toFile(), "r")) {
            facts = switch (FileSignature.of(in)) {
                case JPEG -> JpegHead.read(in);
                case PNG -> PngHead.read(in);
                case WEBP -> WebpHead.read(in);
                case TIFF -> TiffHead.read(file);
                case PDF -> PdfPage.firstLook(file);
            };
        } catch (EOFException cutShort) {
            throw new Refused("artwork.refused.cut-short");
        } catch (Refused said) {
            throw said;
        } catch (IOException | RuntimeException | StackOverflowError broken) {
            // Readers answer damaged files with whatever they trip over; for the sender it is one and the same.
            LOG.debug("The head of a file could not be read: {}", broken.toString());
            throw new Refused("artwork.refused.damaged");
        }
        judgeSize(facts, limits);
        return facts;
    }

    /** By its first bytes. */
    public static boolean isJpeg(Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            return Arrays.equals(in.readNBytes(3), new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF});
        }
    }

    private static void judgeSize(ImageHeader facts, IntakeLimits limits) {
        long width = facts.storedWidth();
        long height = facts.storedHeight();
        if (width < 1 || height < 1) {
            throw new Refused("artwork.refused.damaged");
        }
        if (width > limits.side() || height > limits.side() || width * height > limits.pixels()) {
            throw new Refused("artwork.refused.too-many-pixels", width, height, limits.pixels() / 1_000_000);
        }
    }

    private static long megabytes(long bytes) {
        return Math.ceilDiv(bytes, 1024L * 1024);
    }
}
