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

    /** Lightness is counted in tenths. */
    private static final int TENTHS = 1000;

    private static final int GUIDES = 4096;

    /** What each code value of red, green and blue adds to Y. */
    private static final double[] RED = new double[256];

    private static final double[] GREEN = new double[256];
    private static final double[] BLUE = new double[256];

    static {
        for (int i = 0; i < 256; i++) {
            double v = i / 255.0;
            double linear = v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
            RED[i] = 0.2126 * linear;
            GREEN[i] = 0.7152 * linear;
            BLUE[i] = 0.0722 * linear;
        }
    }

    /** The least Y of each tenth of lightness: a root for each of millions of pixels would take longer than reading the file. */
    private static final double[] LEAST = new double[TENTHS + 2];

    /** The tenth at the beginning of each of so many equal parts of Y. */
    private static final short[] GUIDE = new short[GUIDES + 2];

    static {
        for (int tenth = 1; tenth <= TENTHS; tenth++) {
            LEAST[tenth] = leastOf(tenth);
        }
        LEAST[TENTHS + 1] = Double.POSITIVE_INFINITY;
        for (int part = 0; part < GUIDE.length; part++) {
            GUIDE[part] = (short) tenth((double) part / GUIDES);
        }
    }

    /** By halving between numbers, exact to the last bit: lightness never falls where Y rises. */
    private static double leastOf(int tenth) {
        long below = Double.doubleToLongBits(0);
        long from = Double.doubleToLongBits(2);
        while (from - below > 1) {
            long middle = below + (from - below) / 2;
            if (tenth(Double.longBitsToDouble(middle)) < tenth) {
                below = middle;
            } else {
                from = middle;
            }
        }
        return Double.longBitsToDouble(from);
    }

    private static int tenth(double y) {
        return (int) Math.round(lightness(y) * 10);
    }

    /** @param rgb red, green and blue */
    public static Light of(Frame rgb) {
        int[] histogram = new int[TENTHS + 1];
        byte[] samples = rgb.samples();
        for (int i = 0; i < samples.length; i += 3) {
            double y = RED[samples[i] & 0xFF] + GREEN[samples[i + 1] & 0xFF] + BLUE[samples[i + 2] & 0xFF];
            int tenth = GUIDE[(int) (y * GUIDES)];
            while (y >= LEAST[tenth + 1]) {
                tenth++;
            }
            histogram[tenth]++;
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
        return lightness(RED[red] + GREEN[green] + BLUE[blue]);
    }

    private static double lightness(double y) {
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
