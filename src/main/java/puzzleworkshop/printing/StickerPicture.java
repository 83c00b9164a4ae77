package puzzleworkshop.printing;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import puzzleworkshop.measure.Size;

/**
 * The picture of one sticker, upright, sRGB, without metadata. Read once and closed.
 *
 * @param width pixels across
 * @param height pixels down
 * @param printed what it measures on paper: the sticker or, by less than a pixel on each side, more
 * @param jpeg a whole JPEG file in three channels
 */
record StickerPicture(int width, int height, Size printed, InputStream jpeg) implements Closeable {

    /** Where stickers get their pictures from. */
    @FunctionalInterface
    interface Source {
        StickerPicture open(PrintItem item) throws IOException;
    }

    @Override
    public void close() throws IOException {
        jpeg.close();
    }
}
