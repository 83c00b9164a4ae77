package puzzleworkshop.artwork;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A picture ready to be laid on a sticker. Where nothing has to be drawn anew it is the customer's own JPEG, bit for bit,
 * without its metadata: crop, turns and the mirrored overhang are then matters of how it is laid. The file is gone when
 * this is closed.
 *
 * @param jpeg a whole JPEG file
 * @param width pixels across as they are stored
 * @param height pixels down
 * @param channels 1 grey or 3 colours
 * @param profile the picture's own ICC profile; empty for sRGB, or for grey in steps of sRGB
 * @param laid in this order, later ones over earlier ones; what reaches beyond the sticker is cut off there
 * @param ground colour under the picture as 0xRRGGBB, where it does not cover the sticker
 * @param ppi pixels per inch on paper, in the worse direction
 * @param untouched whether it is the customer's own JPEG
 */
public record PrintPicture(
        Path jpeg,
        int width,
        int height,
        int channels,
        Optional<byte[]> profile,
        List<Lay> laid,
        OptionalInt ground,
        double ppi,
        boolean untouched)
        implements AutoCloseable {

    public PrintPicture {
        laid = List.copyOf(laid);
    }

    /**
     * Where the picture lies, in millimetres from the sticker's upper left corner, right and down.
     *
     * @param x of the upper left corner of the picture as stored
     * @param y of the same
     * @param acrossX from there to its upper right corner
     * @param acrossY of the same
     * @param downX from the upper left to its lower left corner
     * @param downY of the same
     * @param within cut off outside of this
     */
    public record Lay(double x, double y, double acrossX, double acrossY, double downX, double downY, Box within) {}

    /** A part of the sticker, in millimetres from its upper left corner. */
    public record Box(double left, double top, double right, double bottom) {

        boolean isEmpty() {
            return left >= right || top >= bottom;
        }
    }

    @Override
    public void close() throws IOException {
        Files.deleteIfExists(jpeg);
    }
}
