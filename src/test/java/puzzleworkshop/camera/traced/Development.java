package puzzleworkshop.camera.traced;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.metadata.IIOInvalidTreeException;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataNode;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.w3c.dom.NodeList;

/**
 * From light on the sensor to a file: one colour for each pixel in Bayer's pattern, noise, the missing two from their neighbours, white
 * balance, a curve of contrast over sRGB's own, colour made smoother than brightness, brightness sharpened, and a JPEG with colour
 * stored whole, by halves or by quarters.
 */
final class Development {

    private final TracedScene scene;
    private final int width;
    private final int height;
    private final float[] light;

    private Development(TracedScene scene, float[] light) {
        this.scene = scene;
        this.width = scene.width;
        this.height = scene.height;
        this.light = light;
    }

    static byte[] jpeg(TracedScene scene, float[] light) {
        Development development = new Development(scene, light);
        development.expose();
        if (scene.bayer) {
            development.mosaic();
        }
        float[][] ycc = development.toned();
        if (scene.bayer) {
            ycc[1] = box(ycc[1], scene.width, scene.height, 1);
            ycc[2] = box(ycc[2], scene.width, scene.height, 1);
        }
        if (scene.sharpen > 0) {
            development.sharpen(ycc[0]);
        }
        return development.written(ycc);
    }

    private void expose() {
        IntStream.range(0, height).parallel().forEach(row -> {
            SplittableRandom random = new SplittableRandom(scene.seed * 31L + row);
            for (int i = 3 * row * width; i < 3 * (row + 1) * width; i++) {
                double l = light[i] * scene.exposure;
                l += random.nextGaussian() * (scene.readNoise + scene.photonNoise * Math.sqrt(Math.max(0, l)));
                light[i] = (float) Math.min(1, l);
            }
        });
    }

    /** Keeps green in two of four pixels, red and blue in one each; the others are means of the neighbours that have it. */
    private void mosaic() {
        float[] raw = light.clone();
        IntStream.range(0, height).parallel().forEach(row -> {
            for (int column = 0; column < width; column++) {
                for (int c = 0; c < 3; c++) {
                    if (colour(row, column) == c) {
                        continue;
                    }
                    double sum = 0;
                    int count = 0;
                    for (int dy = -1; dy <= 1; dy++) {
                        for (int dx = -1; dx <= 1; dx++) {
                            int y = Math.clamp(row + dy, 0, height - 1);
                            int x = Math.clamp(column + dx, 0, width - 1);
                            if (colour(y, x) == c) {
                                sum += raw[3 * (y * width + x) + c];
                                count++;
                            }
                        }
                    }
                    light[3 * (row * width + column) + c] = (float) (sum / count);
                }
            }
        });
    }

    private static int colour(int row, int column) {
        return row % 2 == 0 ? column % 2 == 0 ? 0 : 1 : column % 2 == 0 ? 1 : 2;
    }

    /** Brightness and two differences (ITU-T T.871), 0 to 255 and −128 to 128. */
    private float[][] toned() {
        float[][] ycc = new float[3][width * height];
        IntStream.range(0, height).parallel().forEach(row -> {
            double[] v = new double[3];
            for (int i = row * width; i < (row + 1) * width; i++) {
                for (int c = 0; c < 3; c++) {
                    double l = Math.clamp(light[3 * i + c] * scene.balance[c], 0, 1);
                    double code = l <= 0.0031308 ? 12.92 * l : 1.055 * Math.pow(l, 1 / 2.4) - 0.055;
                    v[c] = 255 * (code + scene.contrast * (code * code * (3 - 2 * code) - code));
                }
                ycc[0][i] = (float) (0.299 * v[0] + 0.587 * v[1] + 0.114 * v[2]);
                ycc[1][i] = (float) ((v[2] - ycc[0][i]) / 1.772);
                ycc[2][i] = (float) ((v[0] - ycc[0][i]) / 1.402);
            }
        });
        return ycc;
    }

    private void sharpen(float[] bright) {
        float[] soft = bright;
        int rounds = scene.sharpenRadius > 1.1 ? 3 : 2;
        for (int i = 0; i < rounds; i++) {
            soft = box(soft, width, height, 1);
        }
        for (int i = 0; i < bright.length; i++) {
            bright[i] += (float) (scene.sharpen * (bright[i] - soft[i]));
        }
    }

    /** Means over a square of 2 · reach + 1. */
    private static float[] box(float[] plane, int width, int height, int reach) {
        float[] out = new float[plane.length];
        IntStream.range(0, height).parallel().forEach(row -> {
            for (int column = 0; column < width; column++) {
                float sum = 0;
                for (int dy = -reach; dy <= reach; dy++) {
                    int y = Math.clamp(row + dy, 0, height - 1);
                    for (int dx = -reach; dx <= reach; dx++) {
                        sum += plane[y * width + Math.clamp(column + dx, 0, width - 1)];
                    }
                }
                out[row * width + column] = sum / ((2 * reach + 1) * (2 * reach + 1));
            }
        });
        return out;
    }

    private byte[] written(float[][] ycc) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        int[] rgb = new int[width * height];
        for (int i = 0; i < rgb.length; i++) {
            double y = ycc[0][i];
            rgb[i] = level(y + 1.402 * ycc[2][i]) << 16
                    | level(y - 0.344136 * ycc[1][i] - 0.714136 * ycc[2][i]) << 8
                    | level(y + 1.772 * ycc[1][i]);
        }
        image.setRGB(0, 0, width, height, rgb, 0, width);
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ImageWriteParam how = writer.getDefaultWriteParam();
        how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        how.setCompressionQuality(scene.quality);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            IIOMetadata metadata =
                    writer.getDefaultImageMetadata(ImageTypeSpecifier.createFromRenderedImage(image), how);
            setSampling(metadata);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, metadata), how);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        writer.dispose();
        return bytes.toByteArray();
    }

    /** The first component of the frame is brightness: so many of its pixels for one of colour. */
    private void setSampling(IIOMetadata metadata) throws IIOInvalidTreeException {
        IIOMetadataNode root = (IIOMetadataNode) metadata.getAsTree("javax_imageio_jpeg_image_1.0");
        NodeList components = root.getElementsByTagName("componentSpec");
        for (int i = 0; i < components.getLength(); i++) {
            IIOMetadataNode node = (IIOMetadataNode) components.item(i);
            node.setAttribute("HsamplingFactor", Integer.toString(i == 0 ? scene.chromaAcross : 1));
            node.setAttribute("VsamplingFactor", Integer.toString(i == 0 ? scene.chromaDown : 1));
        }
        metadata.setFromTree("javax_imageio_jpeg_image_1.0", root);
    }

    private static int level(double v) {
        return Math.clamp(Math.round(v), 0, 255);
    }
}
