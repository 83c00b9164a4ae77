package puzzleworkshop.artwork.rows;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferInt;
import java.awt.image.Raster;
import java.io.IOException;
import java.nio.file.Path;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;
import puzzleworkshop.artwork.reading.BoundedImageInput;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.PictureFormat;
import puzzleworkshop.artwork.reading.Readers;

/** Rows of any format whose reader can read a region: a strip at a time. */
public final class StripRows {

    /** A strip as its reader holds it; readers start again for each, so it is as large as the heap bears. */
    private static final int STRIP_BYTES = 96 << 20;

    private StripRows() {}

    public static void read(Path file, ImageHeader facts, DecodedRowSink spout) throws IOException {
        ImageReader reader = switch (facts.format()) {
            case PNG -> Readers.ofJava("png");
            case TIFF -> Readers.ofLibrary("tiff");
            default -> Readers.ofLibrary("webp");
        };
        try (ImageInputStream in = new BoundedImageInput(file.toFile())) {
            reader.setInput(in, false, true);
            int width = facts.storedWidth();
            // A WebP is decoded whole whatever region is asked for, so it is asked for once.
            int strip = facts.format() == PictureFormat.WEBP
                    ? facts.storedHeight()
                    : Math.max(16, stripPixels(facts) / width);
            for (int top = 0; top < facts.storedHeight(); top += strip) {
                int height = Math.min(strip, facts.storedHeight() - top);
                ImageReadParam param = reader.getDefaultReadParam();
                param.setSourceRegion(new Rectangle(0, top, width, height));
                BufferedImage image = reader.read(0, param);
                if (image.getWidth() != width || image.getHeight() != height) {
                    throw new IOException("A strip of another size");
                }
                pour(image, top, spout);
            }
        } finally {
            reader.dispose();
        }
    }

    private static int stripPixels(ImageHeader facts) {
        return STRIP_BYTES / (4 * Math.max(1, facts.colours().bits() / 8));
    }

    private static void pour(BufferedImage image, int top, DecodedRowSink spout) {
        ColorModel colours = image.getColorModel();
        Raster raster = image.getRaster();
        int bits = raster.getSampleModel().getSampleSize(0);
        int type = raster.getTransferType();
        boolean samples = colours instanceof ComponentColorModel
                && (bits == 8 || bits == 16)
                && !colours.isAlphaPremultiplied()
                && (type == DataBuffer.TYPE_BYTE || type == DataBuffer.TYPE_USHORT)
                && suits(colours);
        if (samples) {
            pourSamples(raster, colours, bits - 8, top, spout);
        } else {
            pourDrawn(image, top, spout);
        }
    }

    private static boolean suits(ColorModel colours) {
        int kind = colours.getColorSpace().getType();
        return kind == ColorSpace.TYPE_GRAY || kind == ColorSpace.TYPE_RGB || kind == ColorSpace.TYPE_CMYK;
    }

    /** The file's own numbers; its profile is applied later, to the smaller result. */
    private static void pourSamples(Raster raster, ColorModel colours, int shift, int top, DecodedRowSink spout) {
        int bands = colours.getNumColorComponents();
        int all = raster.getNumBands();
        int width = raster.getWidth();
        int[] row = new int[width * all];
        byte[] bytes = new byte[width * all];
        byte[] flat = new byte[width * bands];
        spout.open(bands);
        for (int y = 0; y < raster.getHeight(); y++) {
            raster.getPixels(raster.getMinX(), raster.getMinY() + y, width, 1, row);
            for (int i = 0; i < row.length; i++) {
                bytes[i] = (byte) (row[i] >> shift);
            }
            spout.row(top + y, all == bands ? bytes : Flatten.onWhite(bytes, bands, flat));
        }
    }

    /** Indexed, packed and unusual ones: let Java draw them in the screen's colours on white. */
    private static void pourDrawn(BufferedImage image, int top, DecodedRowSink spout) {
        int width = image.getWidth();
        BufferedImage drawn = new BufferedImage(width, image.getHeight(), BufferedImage.TYPE_INT_RGB);
        Graphics2D g = drawn.createGraphics();
        g.drawImage(image, 0, 0, Color.WHITE, null);
        g.dispose();
        spout.openScreenColours();
        pourPacked(drawn, top, spout);
    }

    /** Rows of a picture of {@link BufferedImage#TYPE_INT_RGB}. */
    public static void pourPacked(BufferedImage drawn, int top, DecodedRowSink spout) {
        int width = drawn.getWidth();
        int[] packed = ((DataBufferInt) drawn.getRaster().getDataBuffer()).getData();
        byte[] bytes = new byte[width * 3];
        for (int y = 0; y < drawn.getHeight(); y++) {
            int from = y * width;
            for (int x = 0, to = 0; x < width; x++) {
                int rgb = packed[from + x];
                bytes[to++] = (byte) (rgb >> 16);
                bytes[to++] = (byte) (rgb >> 8);
                bytes[to++] = (byte) rgb;
            }
            spout.row(top + y, bytes);
        }
    }
}
