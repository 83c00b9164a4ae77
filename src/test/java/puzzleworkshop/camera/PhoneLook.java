package puzzleworkshop.camera;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * What a phone does to a photo before it hands it over, and our renderer does not: another white balance and tone curve, light
 * fall-off to the corners, noise in rows, chroma at half the resolution, sharpening with its bright and dark seams, a JPEG of
 * its own. Amounts are drawn from what is usual (common practice), not from any one camera.
 */
public final class PhoneLook {

    private final Random random;
    private final int width;
    private final int height;
    private final float[][] planes = new float[3][];

    private PhoneLook(BufferedImage image, Random random) {
        this.random = random;
        width = image.getWidth();
        height = image.getHeight();
        int[] rgb = image.getRGB(0, 0, width, height, null, 0, width);
        for (int c = 0; c < 3; c++) {
            planes[c] = new float[rgb.length];
            for (int i = 0; i < rgb.length; i++) {
                planes[c][i] = (rgb[i] >> 16 - 8 * c & 0xFF) / 255f;
            }
        }
    }

    public static byte[] of(byte[] jpeg, long seed) {
        try {
            PhoneLook look = new PhoneLook(ImageIO.read(new ByteArrayInputStream(jpeg)), new Random(seed));
            look.tone();
            look.chroma();
            look.sharpen();
            look.rows();
            return look.written();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void tone() {
        double[] gain = new double[3];
        for (int c = 0; c < 3; c++) {
            gain[c] = 1 + 0.03 * random.nextGaussian();
        }
        double gamma = 1 + 0.08 * random.nextGaussian();
        double contrast = 0.12 * random.nextDouble();
        double fall = 0.25 * random.nextDouble();
        double far = Math.hypot(width, height) / 2;
        for (int i = 0; i < planes[0].length; i++) {
            double r = Math.hypot(i % width - width / 2.0, i / width - height / 2.0) / far;
            double light = 1 - fall * r * r;
            for (int c = 0; c < 3; c++) {
                double v = Math.min(1, Math.pow(planes[c][i] * gain[c], gamma) * Math.pow(light, 0.45));
                // a curve through black, middle and white
                planes[c][i] = (float) Math.clamp(v + contrast * v * (1 - v) * (2 * v - 1) * 2, 0, 1);
            }
        }
    }

    /** Colour differences averaged over two by two pixels. */
    private void chroma() {
        for (int y = 0; y + 1 < height; y += 2) {
            for (int x = 0; x + 1 < width; x += 2) {
                int[] at = {y * width + x, y * width + x + 1, (y + 1) * width + x, (y + 1) * width + x + 1};
                for (int c = 0; c < 3; c += 2) {
                    float mean = 0;
                    for (int i : at) {
                        mean += (planes[c][i] - planes[1][i]) / 4;
                    }
                    for (int i : at) {
                        planes[c][i] = planes[1][i] + mean;
                    }
                }
            }
        }
    }

    /** Unsharp mask: what differs from a blurred copy is added once more. */
    private void sharpen() {
        double amount = 0.2 + 0.5 * random.nextDouble();
        double sigma = 0.8 + 0.6 * random.nextDouble();
        for (float[] plane : planes) {
            float[] soft = plane.clone();
            RenderedPhoto.blur(soft, width, height, sigma);
            for (int i = 0; i < plane.length; i++) {
                plane[i] = (float) Math.clamp(plane[i] + amount * (plane[i] - soft[i]), 0, 1);
            }
        }
    }

    private void rows() {
        for (int y = 0; y < height; y++) {
            float row = (float) (0.004 * random.nextGaussian());
            for (int x = 0; x < width; x++) {
                for (float[] plane : planes) {
                    plane[y * width + x] += row;
                }
            }
        }
    }

    private byte[] written() throws IOException {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        int[] rgb = new int[width * height];
        for (int i = 0; i < rgb.length; i++) {
            for (int c = 0; c < 3; c++) {
                rgb[i] = rgb[i] << 8 | Math.clamp(Math.round(planes[c][i] * 255), 0, 255);
            }
        }
        image.setRGB(0, 0, width, height, rgb, 0, width);
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ImageWriteParam how = writer.getDefaultWriteParam();
        how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        how.setCompressionQuality(0.8f);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), how);
        }
        writer.dispose();
        return bytes.toByteArray();
    }
}
