package puzzleworkshop.artwork.reading;

import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;

/** Which decoder reads what: named by us, never left to the order in which libraries happen to register. */
public final class Readers {

    private Readers() {}

    /** Java's own reader. */
    public static ImageReader ofJava(String format) {
        return find(format, "com.sun.");
    }

    /** The library's reader (TwelveMonkeys). */
    public static ImageReader ofLibrary(String format) {
        return find(format, "com.twelvemonkeys.");
    }

    private static ImageReader find(String format, String maker) {
        Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(format);
        while (readers.hasNext()) {
            ImageReader reader = readers.next();
            if (reader.getClass().getName().startsWith(maker)) {
                return reader;
            }
        }
        throw new IllegalStateException("No reader for " + format);
    }
}
