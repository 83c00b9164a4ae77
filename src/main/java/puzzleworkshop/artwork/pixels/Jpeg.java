package puzzleworkshop.artwork.pixels;

import java.awt.Point;
import java.awt.Transparency;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.PixelInterleavedSampleModel;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOInvalidTreeException;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.stream.FileImageOutputStream;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import puzzleworkshop.artwork.rows.RowRaster;

/**
 * Writes JPEGs in sRGB that hold pixels and nothing else: no location, no camera, no date of the original. Colour is kept
 * at full resolution (4:4:4), so that red lettering prints clean.
 */
public final class Jpeg {

    private static final ColorModel SCREEN = new ComponentColorModel(
            ColorSpace.getInstance(ColorSpace.CS_sRGB), false, false, Transparency.OPAQUE, DataBuffer.TYPE_BYTE);

    private Jpeg() {}

    /** Gives one row of red, green, blue side by side; asked from top to bottom. */
    @FunctionalInterface
    public interface Rows {
        byte[] row(int y);
    }

    /**
     * @param quality 0 to 1
     * @param ppi written into the file as its density
     */
    public static byte[] write(int width, int height, double ppi, float quality, Rows rows) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(Math.max(4096, width * height / 8));
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            write(width, height, ppi, quality, rows, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** The same into a file: the heap holds some rows only. */
    public static void write(int width, int height, double ppi, float quality, Rows rows, Path file)
            throws IOException {
        try (FileImageOutputStream out = new FileImageOutputStream(file.toFile())) {
            write(width, height, ppi, quality, rows, out);
        }
    }

    private static void write(int width, int height, double ppi, float quality, Rows rows, ImageOutputStream out)
            throws IOException {
        ImageWriter writer = writer();
        try {
            BufferedImage image = new BufferedImage(SCREEN, new RowsOnDemand(width, height, rows), false, null);
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(quality);
            IIOMetadata metadata = writer.getDefaultImageMetadata(new ImageTypeSpecifier(image), param);
            describe(metadata, ppi);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, metadata), param);
        } finally {
            writer.dispose();
        }
    }

    public static byte[] write(Frame rgb, float quality) {
        int stride = rgb.width() * 3;
        byte[] row = new byte[stride];
        return write(rgb.width(), rgb.height(), 72, quality, y -> {
            System.arraycopy(rgb.samples(), y * stride, row, 0, stride);
            return row;
        });
    }

    private static ImageWriter writer() {
        var writers = ImageIO.getImageWritersByFormatName("jpeg");
        while (writers.hasNext()) {
            ImageWriter writer = writers.next();
            if (writer.getClass().getName().startsWith("com.sun.")) {
                return writer;
            }
        }
        throw new IllegalStateException("No writer for JPEG");
    }

    /** Java's native JPEG metadata format: sampling factors of the frame and density of the JFIF segment. */
    private static void describe(IIOMetadata metadata, double ppi) throws IIOInvalidTreeException {
        String format = "javax_imageio_jpeg_image_1.0";
        Element root = (Element) metadata.getAsTree(format);
        NodeList components = root.getElementsByTagName("componentSpec");
        for (int i = 0; i < components.getLength(); i++) {
            ((Element) components.item(i)).setAttribute("HsamplingFactor", "1");
            ((Element) components.item(i)).setAttribute("VsamplingFactor", "1");
        }
        Node jfif = root.getElementsByTagName("app0JFIF").item(0);
        if (jfif instanceof Element density) {
            density.setAttribute("resUnits", "1");
            density.setAttribute("Xdensity", Long.toString(Math.clamp(Math.round(ppi), 1, 65_000)));
            density.setAttribute("Ydensity", Long.toString(Math.clamp(Math.round(ppi), 1, 65_000)));
        }
        metadata.setFromTree(format, root);
    }

    /** A raster that has no pixels until the writer asks for a row; see {@link RowRaster} for the reading side. */
    private static final class RowsOnDemand extends WritableRaster {

        private final Rows rows;

        RowsOnDemand(int width, int height, Rows rows) {
            super(
                    new PixelInterleavedSampleModel(
                            DataBuffer.TYPE_BYTE, width, height, 3, width * 3, new int[] {0, 1, 2}),
                    new DataBufferByte(width * 3),
                    new Point(0, 0));
            this.rows = rows;
        }

        @Override
        public Raster createChild(int x, int y, int w, int h, int childX, int childY, int[] bands) {
            if (h != 1 || x != 0 || w != width) {
                throw new IllegalStateException("Rows are asked for one by one, not " + w + " × " + h);
            }
            byte[] row = rows.row(y);
            return Raster.createInterleavedRaster(
                    new DataBufferByte(row, width * 3), width, 1, width * 3, 3, new int[] {0, 1, 2}, null);
        }
    }
}
