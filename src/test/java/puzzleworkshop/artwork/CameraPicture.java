package puzzleworkshop.artwork;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * A JPEG as a phone held upright writes it: the pixels lie on their side (Exif orientation 6), colour is stored at half
 * resolution (4:2:0), the file is progressive, its profile has wider primaries than sRGB, and Exif names a camera and the
 * place (CIPA DC-008). The upright scene has a quarter of red, green / blue, yellow, gradients and the noise of a sensor.
 */
public final class CameraPicture {

    public static final String MAKE = "Camera Works";
    public static final int LATITUDE = 54;

    private CameraPicture() {}

    /** @param longer pixels of the longer side, 4:3; the upright picture is higher than wide */
    public static byte[] jpeg(int longer, long seed) {
        int width = longer;
        int height = longer * 3 / 4;
        Random random = new Random(seed);
        int[] noise = new int[65_537];
        Arrays.setAll(noise, i -> random.nextInt(17) - 8);
        BufferedImage stored = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        int[] row = new int[width];
        for (int sy = 0; sy < height; sy++) {
            for (int sx = 0; sx < width; sx++) {
                // Orientation 6: the stored lower left corner is seen at the upper left.
                row[sx] = seen(
                        (height - 1 - sy) / (double) height,
                        sx / (double) width,
                        noise[(sy * 7919 + sx * 31) % noise.length]);
            }
            stored.setRGB(0, sy, width, 1, row, 0, width);
        }
        byte[] plain = progressive(stored);
        return SamplePictures.withSegment(SamplePictures.withProfile(plain, wideColours()), 0xE1, exif());
    }

    private static int seen(double x, double y, int noise) {
        boolean right = x > 0.5;
        boolean low = y > 0.5;
        int light = (int) (25 * Math.sin(x * 40) * Math.sin(y * 55)) + noise;
        int red = right == low ? 190 : 50;
        int green = right ? 180 : 50;
        int blue = low && !right ? 190 : 50;
        return clamp(red + light) << 16 | clamp(green + light) << 8 | clamp(blue + light);
    }

    private static int clamp(int value) {
        return Math.clamp(value, 0, 255);
    }

    private static byte[] progressive(BufferedImage image) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam how = writer.getDefaultWriteParam();
            how.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
            how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            how.setCompressionQuality(0.9f);
            writer.setOutput(out);
            writer.write(null, new IIOImage(image, null, null), how);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }

    /** The steps of sRGB with primaries of DCI-P3 adapted to D50 (SMPTE EG 432-1; values from memory). */
    public static byte[] wideColours() {
        ICC_Profile profile = ICC_Profile.getInstance(
                ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData());
        profile.setData(ICC_Profile.icSigRedColorantTag, xyz(0.51512, 0.24120, -0.00105));
        profile.setData(ICC_Profile.icSigGreenColorantTag, xyz(0.29198, 0.69225, 0.04189));
        profile.setData(ICC_Profile.icSigBlueColorantTag, xyz(0.15710, 0.06657, 0.78407));
        return profile.getData();
    }

    private static byte[] xyz(double x, double y, double z) {
        ByteBuffer tag = ByteBuffer.allocate(20)
                .put("XYZ ".getBytes(StandardCharsets.US_ASCII))
                .putInt(0);
        for (double value : new double[] {x, y, z}) {
            tag.putInt((int) Math.round(value * 65536));
        }
        return tag.array();
    }

    /** Two directories, big endian: camera and orientation, then the place. */
    private static byte[] exif() {
        byte[] make = (MAKE + "\0").getBytes(StandardCharsets.US_ASCII);
        byte[] model = "Model 1\0".getBytes(StandardCharsets.US_ASCII);
        int first = 8;
        int values = first + 2 + 4 * 12 + 4;
        int place = values + make.length + make.length % 2 + model.length;
        int degrees = place + 2 + 4 * 12 + 4;
        ByteBuffer all = ByteBuffer.allocate(6 + degrees + 48);
        all.put("Exif\0\0MM\0*".getBytes(StandardCharsets.ISO_8859_1)).putInt(first);
        all.putShort((short) 4);
        entry(all, 0x010F, 2, make.length, values);
        entry(all, 0x0110, 2, model.length, values + make.length + make.length % 2);
        entry(all, 0x0112, 3, 1, 6 << 16);
        entry(all, 0x8825, 4, 1, place);
        all.putInt(0)
                .put(make)
                .position(6 + values + make.length + make.length % 2)
                .put(model);
        all.position(6 + place);
        all.putShort((short) 4);
        entry(all, 1, 2, 2, 'N' << 24);
        entry(all, 2, 5, 3, degrees);
        entry(all, 3, 2, 2, 'E' << 24);
        entry(all, 4, 5, 3, degrees + 24);
        all.putInt(0);
        for (int part : new int[] {LATITUDE, 19, 23, 10, 8, 5}) {
            all.putInt(part).putInt(1);
        }
        return all.array();
    }

    private static void entry(ByteBuffer all, int tag, int type, int count, int value) {
        all.putShort((short) tag).putShort((short) type).putInt(count).putInt(value);
    }
}
