package puzzleworkshop.camera;

/**
 * A photo as it is measured in: sRGB pixels, row by row. A place in it is given in pixels from its top left corner, so the middle
 * of the first pixel is (0.5, 0.5).
 *
 * @param width in pixels
 * @param height in pixels
 * @param rgb 0xRRGGBB, width × height of them; not copied, because a photo has tens of megabytes
 * @param focal length of the lens over the longer side of the photo, as the camera itself says it; not a number where it says
 *     nothing
 */
public record Photo(int width, int height, int[] rgb, double focal) {

    /** Larger photos are halved before they are measured in: nothing is won by more, and memory is. */
    public static final long MOST_PIXELS = 20_000_000L;

    private static final float[] LINEAR = new float[256];

    static {
        // IEC 61966-2-1 (sRGB), decoding
        for (int i = 0; i < 256; i++) {
            double c = i / 255.0;
            LINEAR[i] = (float) (c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4));
        }
    }

    public Photo {
        if (width < 1 || height < 1 || rgb.length != width * height) {
            throw new IllegalArgumentException(
                    "A photo of " + width + " × " + height + " with " + rgb.length + " pixels");
        }
    }

    /** Of a camera that says nothing of its lens. */
    public Photo(int width, int height, int[] rgb) {
        this(width, height, rgb, Double.NaN);
    }

    /** Light (not code values) of one channel of a pixel, 0 to 1; shift 16, 8 or 0 for red, green or blue. */
    public float light(int index, int shift) {
        return LINEAR[rgb[index] >> shift & 0xFF];
    }

    public boolean shows(double u, double v) {
        return u >= 0.5 && v >= 0.5 && u <= width - 0.5 && v <= height - 0.5;
    }

    /** Light at a place between pixels (bilinear), added to the first three numbers of sum. */
    public void addLight(double u, double v, double weight, double[] sum) {
        double x = Math.clamp(u - 0.5, 0, width - 1.001);
        double y = Math.clamp(v - 0.5, 0, height - 1.001);
        int i = (int) x;
        int j = (int) y;
        double fx = x - i;
        double fy = y - j;
        int at = j * width + i;
        int right = width > 1 ? 1 : 0;
        int down = height > 1 ? width : 0;
        for (int c = 0; c < 3; c++) {
            int shift = 16 - 8 * c;
            double top = light(at, shift) * (1 - fx) + light(at + right, shift) * fx;
            double below = light(at + down, shift) * (1 - fx) + light(at + down + right, shift) * fx;
            sum[c] += weight * (top * (1 - fy) + below * fy);
        }
    }

    /**
     * Brightness (not code values) between pixels, 0 to 1, from luma alone: JPEG keeps that for every pixel and colour for two by
     * two of them, so red, green and blue by themselves are blurred where luma is not. Weights: ITU-T T.871.
     */
    public double brightness(double u, double v) {
        double x = Math.clamp(u - 0.5, 0, width - 1.001);
        double y = Math.clamp(v - 0.5, 0, height - 1.001);
        int i = (int) x;
        int j = (int) y;
        double fx = x - i;
        double fy = y - j;
        int at = j * width + i;
        int right = width > 1 ? 1 : 0;
        int down = height > 1 ? width : 0;
        return (luma(at) * (1 - fx) + luma(at + right) * fx) * (1 - fy)
                + (luma(at + down) * (1 - fx) + luma(at + down + right) * fx) * fy;
    }

    private float luma(int index) {
        int pixel = rgb[index];
        return LINEAR[(77 * (pixel >> 16 & 0xFF) + 150 * (pixel >> 8 & 0xFF) + 29 * (pixel & 0xFF)) >> 8];
    }

    /** Half as wide and high, each pixel the mean of four. */
    public Photo halved() {
        int w = width / 2;
        int h = height / 2;
        int[] half = new int[w * h];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                int a = 2 * y * width + 2 * x;
                int pixel = 0;
                for (int shift = 16; shift >= 0; shift -= 8) {
                    int sum = (rgb[a] >> shift & 0xFF)
                            + (rgb[a + 1] >> shift & 0xFF)
                            + (rgb[a + width] >> shift & 0xFF)
                            + (rgb[a + width + 1] >> shift & 0xFF);
                    pixel |= (sum + 2) / 4 << shift;
                }
                half[y * w + x] = pixel;
            }
        }
        return new Photo(w, h, half, focal);
    }

    /** Not larger than what is measured in. */
    public Photo reduced() {
        Photo photo = this;
        while ((long) photo.width * photo.height > MOST_PIXELS) {
            photo = photo.halved();
        }
        return photo;
    }
}
