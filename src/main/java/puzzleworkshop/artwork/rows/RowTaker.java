package puzzleworkshop.artwork.rows;

/** Takes a picture's rows from top to bottom, as stored. */
@FunctionalInterface
public interface RowTaker {

    /**
     * @param y 0 for the first row
     * @param samples one byte per channel, channels of a pixel side by side; may be used again for the next row
     */
    void row(int y, byte[] samples);

    /** Both take every row. */
    default RowTaker and(RowTaker other) {
        return (y, samples) -> {
            row(y, samples);
            other.row(y, samples);
        };
    }
}
