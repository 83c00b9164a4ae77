package puzzleworkshop.artwork.rows;

import java.awt.Rectangle;
import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;
import puzzleworkshop.artwork.reading.BareJpeg;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.Readers;
import puzzleworkshop.measure.Refused;

/** A JPEG's rows: grey and RGB in one pass, CMYK and YCCK by strips with our own arithmetic. */
public final class JpegRows {

    private static final int STRIP_BYTES = 96 << 20;

    /** Programs write up to a dozen; for each all pixels are worked out once more. */
    private static final int MOST_SCANS = 100;

    private static final long MOST_PIXELS_OF_ALL_SCANS = 1_500_000_000L;

    private JpegRows() {}

    public static void read(Path file, ImageHeader facts, DecodedRowSink spout) throws IOException {
        int components = facts.scan().orElseThrow().components();
        ImageReader reader = Readers.ofJava("jpeg");
        try (ImageInputStream in = new FileImageInputStream(file.toFile())) {
            reader.setInput(in, components < 4, true);
            spout.open(components);
            if (components == 4) {
                if (facts.scan().orElseThrow().several()) {
                    boundedScans(file, facts);
                }
                readInked(reader, facts, spout);
            } else {
                readOnePass(reader, components, file, facts, spout);
            }
        } finally {
            reader.dispose();
        }
    }

    private static void readOnePass(
            ImageReader reader, int components, Path file, ImageHeader facts, DecodedRowSink spout) throws IOException {
        int space = components == 1 ? ColorSpace.CS_GRAY : ColorSpace.CS_sRGB;
        ColorModel colours = new ComponentColorModel(
                ColorSpace.getInstance(space), false, false, Transparency.OPAQUE, DataBuffer.TYPE_BYTE);
        RowTaker taker =
                facts.scan().orElseThrow().several() ? new LastPass(boundedScans(file, facts), spout::row) : spout::row;
        RowRaster rows = new RowRaster(facts.storedWidth(), facts.storedHeight(), components, taker);
        ImageReadParam param = reader.getDefaultReadParam();
        param.setDestination(new BufferedImage(colours, rows, false, null));
        // Naming the bands keeps the reader from converting colours row by row; we do that on the smaller result.
        param.setSourceBands(components == 1 ? new int[] {0} : new int[] {0, 1, 2});
        reader.read(0, param);
    }

    private static int boundedScans(Path file, ImageHeader facts) throws IOException {
        int scans = BareJpeg.scans(file);
        long pixels = (long) facts.storedWidth() * facts.storedHeight();
        if (scans > MOST_SCANS || scans * pixels > MOST_PIXELS_OF_ALL_SCANS) {
            throw new Refused("artwork.refused.too-many-scans", scans);
        }
        return scans;
    }

    /** After each scan Java's reader stores all rows as they are known by then; only those after the last one count. */
    private static final class LastPass implements RowTaker {
        private final int scans;
        private final RowTaker taker;
        private int pass;

        LastPass(int scans, RowTaker taker) {
            this.scans = scans;
            this.taker = taker;
        }

        @Override
        public void row(int y, byte[] samples) {
            pass += y == 0 ? 1 : 0;
            if (pass == scans) {
                taker.row(y, samples);
            }
        }
    }

    private static void readInked(ImageReader reader, ImageHeader facts, DecodedRowSink spout) throws IOException {
        int width = facts.storedWidth();
        int strip = Math.max(16, STRIP_BYTES / (width * 4));
        int transform = facts.scan().orElseThrow().adobeTransform();
        byte[] row = new byte[width * 4];
        for (int top = 0; top < facts.storedHeight(); top += strip) {
            int height = Math.min(strip, facts.storedHeight() - top);
            ImageReadParam param = reader.getDefaultReadParam();
            param.setSourceRegion(new Rectangle(0, top, width, height));
            Raster raster = reader.readRaster(0, param);
            byte[] samples = ((DataBufferByte) raster.getDataBuffer()).getData();
            for (int y = 0; y < height; y++) {
                System.arraycopy(samples, y * row.length, row, 0, row.length);
                ink(row, transform);
                spout.row(top + y, row);
            }
        }
    }

    /**
     * To 0 = no ink. Files with an Adobe segment hold inverted inks; transform 2 holds YCCK, whose first three channels
     * are the YCbCr of the complement of the (inverted) inks (Adobe Technical Note 5116; ITU-T T.871 for YCbCr).
     */
    private static void ink(byte[] row, int transform) {
        if (transform == 2) {
            for (int i = 0; i < row.length; i += 4) {
                double y = row[i] & 0xFF;
                double cb = (row[i + 1] & 0xFF) - 128;
                double cr = (row[i + 2] & 0xFF) - 128;
                row[i] = clamp(y + 1.402 * cr);
                row[i + 1] = clamp(y - 0.344136 * cb - 0.714136 * cr);
                row[i + 2] = clamp(y + 1.772 * cb);
                row[i + 3] = (byte) (255 - (row[i + 3] & 0xFF));
            }
        } else if (transform >= 0) {
            for (int i = 0; i < row.length; i++) {
                row[i] = (byte) (255 - (row[i] & 0xFF));
            }
        }
    }

    private static byte clamp(double value) {
        return (byte) Math.clamp(Math.round(value), 0, 255);
    }
}
