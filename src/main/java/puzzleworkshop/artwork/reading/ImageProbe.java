package puzzleworkshop.artwork.reading;

import java.io.EOFException;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import puzzleworkshop.measure.Refused;

/** Tells what a file is by its content and judges its size from the header; nothing is decoded yet. */
public final class ImageProbe {

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
        }
        judgeSize(facts, limits);
        return facts;
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
