package puzzleworkshop.artwork.reading;

/**
 * What is taken in at most. Judged on the header, before a pixel is decoded.
 *
 * @param bytes of the file
 * @param pixels of the picture, width times height
 * @param side of the picture in pixels
 */
public record IntakeLimits(long bytes, long pixels, int side) {

    /** 50 MB, 200 megapixels, 30,000 pixels a side less one: larger than any camera, smaller than a decompression bomb. */
    public static final IntakeLimits USUAL = new IntakeLimits(50L * 1024 * 1024, 200_000_000L, 29_999);
}
