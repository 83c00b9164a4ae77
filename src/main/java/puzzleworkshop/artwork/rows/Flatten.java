package puzzleworkshop.artwork.rows;

/** Lays see-through pixels on white. */
public final class Flatten {

    private Flatten() {}

    /**
     * @param samples colour channels and alpha side by side, not premultiplied
     * @param colourBands channels without alpha
     * @param flat where to put the opaque row
     * @return {@code flat}
     */
    public static byte[] onWhite(byte[] samples, int colourBands, byte[] flat) {
        int from = 0;
        int to = 0;
        while (to < flat.length) {
            int alpha = samples[from + colourBands] & 0xFF;
            for (int band = 0; band < colourBands; band++) {
                int value = samples[from + band] & 0xFF;
                flat[to++] = (byte) (255 + (value - 255) * alpha / 255);
            }
            from += colourBands + 1;
        }
        return flat;
    }
}
