package puzzleworkshop.artwork.pixels;

/** The rows of a picture as it is looked at: upright and turned by quarter turns. */
interface TurnedRows {

    int width();

    int height();

    int channels();

    /**
     * @param y 0 to height − 1; cheapest in rising order
     * @return channels side by side, valid until the next call
     */
    byte[] row(int y);

    /** Rows of a picture that is held in memory. */
    static TurnedRows of(Frame frame, int quarterTurns) {
        return new TurnedPixels(
                frame.width(),
                frame.height(),
                frame.channels(),
                1,
                quarterTurns,
                (index, length, into, at) -> System.arraycopy(frame.samples(), index, into, at, length));
    }
}
