package puzzleworkshop.artwork.reading;

import java.io.File;
import java.io.IOException;
import javax.imageio.stream.FileImageInputStream;

/**
 * A file that does not let itself be read past its end for ever. The reader of lossless WebP takes the end for zeros, and
 * with a damaged table of codes would go on with them for hours.
 */
public final class BoundedImageInput extends FileImageInputStream {

    /** Good readers look ahead by some bytes. */
    private static final int PATIENCE = 4096;

    private int beyond;

    public BoundedImageInput(File file) throws IOException {
        super(file);
    }

    @Override
    public int read() throws IOException {
        return ended(super.read());
    }

    @Override
    public int read(byte[] into, int offset, int length) throws IOException {
        return ended(super.read(into, offset, length));
    }

    /** Unchecked, because the reader swallows what is checked. */
    private int ended(int got) {
        if (got < 0 && ++beyond > PATIENCE) {
            throw new IllegalStateException("Read past the end again and again");
        }
        return got;
    }
}
