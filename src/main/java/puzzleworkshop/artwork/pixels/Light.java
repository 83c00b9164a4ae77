package puzzleworkshop.artwork.pixels;

/**
 * How light and how contrasty a picture is, in lightness L* (CIE 1976: L* = 116·∛(Y/Yn) − 16 above Y/Yn = 216/24389, else
 * 24389/27·Y/Yn), with Y from sRGB (IEC 61966-2-1).
 *
 * @param darkShare share of pixels with L* below 10
 * @param median L* that half of the pixels stay below
 * @param contrast difference of L* between the 95th and the 5th hundredth
 */
public record Light(double darkShare, double median, double contrast) {

    private static final double[] LINEAR = new double[256];

    static {
        for (int i = 0; i < 256; i++) {
            double v = i / 255.0;
            LINEAR[i] = v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
        }
    }

    /** @param rgb red, green and blue */
    public static Light of(Frame rgb) {
        int[] histogram = new int[1001];
        byte[] samples = rgb.samples();
        for (int i = 0; i < samples.length; i += 3) {
            double lightness = lightness(samples[i] & 0xFF, samples[i + 1] & 0xFF, samples[i + 2] & 0xFF);
            histogram[(int) Math.round(lightness * 10)]++;
        }
        int pixels = samples.length / 3;
        int dark = 0;
        for (int i = 0; i < 100; i++) {
            dark += histogram[i];
        }
        return new Light(
                (double) dark / pixels,
                below(histogram, pixels, 0.5),
                below(histogram, pixels, 0.95) - below(histogram, pixels, 0.05));
    }

    static double lightness(int red, int green, int blue) {
        double y = 0.2126 * LINEAR[red] + 0.7152 * LINEAR[green] + 0.0722 * LINEAR[blue];
        double l = y > 216.0 / 24389 ? 116 * Math.cbrt(y) - 16 : 24389.0 / 27 * y;
        return Math.clamp(l, 0, 100);
    }

    private static double below(int[] histogram, int pixels, double share) {
        long wanted = (long) Math.ceil(share * pixels);
        long seen = 0;
        for (int i = 0; i < histogram.length; i++) {
            seen += histogram[i];
            if (seen >= wanted) {
                return i / 10.0;
            }
        }
        return 100;
    }
}
