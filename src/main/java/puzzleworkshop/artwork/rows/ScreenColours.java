package puzzleworkshop.artwork.rows;

import java.awt.Point;
import java.awt.color.CMMException;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.ColorConvertOp;
import java.awt.image.DataBufferByte;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.util.Optional;

/**
 * Turns a file's own channels into sRGB (IEC 61966-2-1): by the embedded ICC profile where there is a usable one, else
 * grey and RGB as they are and CMYK by the complement. Safe for use from several threads.
 */
public final class ScreenColours {

    private final int channels;
    private final Optional<ColorConvertOp> byProfile;

    private ScreenColours(int channels, Optional<ColorConvertOp> byProfile) {
        this.channels = channels;
        this.byProfile = byProfile;
    }

    public static ScreenColours of(int channels, Optional<ICC_Profile> profile) {
        return new ScreenColours(channels, profile.flatMap(p -> conversion(channels, p)));
    }

    /** Some profiles parse and then fail in the colour engine; a trial pixel finds them out before the picture does. */
    private static Optional<ColorConvertOp> conversion(int channels, ICC_Profile profile) {
        try {
            ColorSpace own = new ICC_ColorSpace(profile);
            ColorSpace screen = ColorSpace.getInstance(ColorSpace.CS_sRGB);
            if (own.isCS_sRGB()) {
                return Optional.empty();
            }
            ColorConvertOp conversion = new ColorConvertOp(own, screen, null);
            conversion.filter(raster(new byte[channels], 1, 1, channels), raster(new byte[3], 1, 1, 3));
            return Optional.of(conversion);
        } catch (CMMException | IllegalArgumentException | IndexOutOfBoundsException unusable) {
            return Optional.empty();
        }
    }

    /**
     * @param samples channels side by side, row by row
     * @return red, green, blue side by side
     */
    public byte[] toScreen(byte[] samples, int width, int height) {
        if (byProfile.isPresent()) {
            byte[] rgb = new byte[width * height * 3];
            synchronized (this) {
                byProfile.get().filter(raster(samples, width, height, channels), raster(rgb, width, height, 3));
            }
            return rgb;
        }
        return switch (channels) {
            case 1 -> fromGrey(samples, width * height);
            case 4 -> fromInks(samples, width * height);
            default -> samples;
        };
    }

    private static byte[] fromGrey(byte[] grey, int pixels) {
        byte[] rgb = new byte[pixels * 3];
        for (int i = 0, to = 0; i < pixels; i++) {
            rgb[to++] = grey[i];
            rgb[to++] = grey[i];
            rgb[to++] = grey[i];
        }
        return rgb;
    }

    private static byte[] fromInks(byte[] inks, int pixels) {
        byte[] rgb = new byte[pixels * 3];
        for (int i = 0; i < pixels; i++) {
            int paper = 255 - (inks[i * 4 + 3] & 0xFF);
            for (int c = 0; c < 3; c++) {
                rgb[i * 3 + c] = (byte) ((255 - (inks[i * 4 + c] & 0xFF)) * paper / 255);
            }
        }
        return rgb;
    }

    private static WritableRaster raster(byte[] samples, int width, int height, int bands) {
        int[] offsets = new int[bands];
        for (int i = 0; i < bands; i++) {
            offsets[i] = i;
        }
        return Raster.createInterleavedRaster(
                new DataBufferByte(samples, samples.length),
                width,
                height,
                width * bands,
                bands,
                offsets,
                new Point(0, 0));
    }
}
