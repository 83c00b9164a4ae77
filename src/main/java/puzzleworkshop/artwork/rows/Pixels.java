package puzzleworkshop.artwork.rows;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.WorkLimit;

/**
 * A picture's pixels, read from the file row by row: never more of them in memory than a strip. Channels are grey, RGB or
 * CMYK (0 = no ink) in the file's own colour space; see-through parts are laid on white.
 */
public final class Pixels {

    private static final Logger LOG = LoggerFactory.getLogger(Pixels.class);

    private final Path file;
    private final ImageHeader facts;
    private final WorkLimit limit;

    private Pixels(Path file, ImageHeader facts, WorkLimit limit) {
        this.file = file;
        this.facts = facts;
        this.limit = limit;
    }

    public static Pixels of(Path file, ImageHeader facts) {
        return of(file, facts, WorkLimit.none());
    }

    /** @param limit looked at for every row */
    public static Pixels of(Path file, ImageHeader facts, WorkLimit limit) {
        return new Pixels(file, facts, limit);
    }

    public ImageHeader facts() {
        return facts;
    }

    /**
     * What one row taker gets.
     *
     * @param count how many there are
     * @param colours how they become colours of the screen
     * @param own whether they are the file's own channels, or the screen's already
     */
    public record Channels(int count, ScreenColours colours, boolean own) {}

    /** Makes the taker once the channels are known, that is before the first row. */
    @FunctionalInterface
    public interface TakerFor {
        RowTaker with(Channels channels);
    }

    /**
     * Reads all rows.
     *
     * @return the channels that were read
     * @throws Refused when the pixels cannot be read; the sentence says what to send
     */
    public Channels each(TakerFor maker) throws IOException {
        DecodedRowSink spout = new DecodedRowSink(facts, maker, limit);
        try {
            switch (facts.format()) {
                case JPEG -> JpegRows.read(file, facts, spout);
                case PNG -> PngRows.read(file, facts, spout);
                case TIFF, WEBP -> StripRows.read(file, facts, spout);
                case PDF -> PdfPage.draw(file, facts, spout);
            }
        } catch (Refused said) {
            throw said;
        } catch (UncheckedIOException full) {
            throw full; // of whoever writes the rows
        } catch (IOException | RuntimeException broken) {
            throw refusedBy(broken);
        } catch (StackOverflowError nested) {
            throw new Refused("artwork.refused.damaged");
        } catch (OutOfMemoryError tooMuch) {
            // Thrown while allocating one large array for this very file; giving it up frees everything at once.
            throw new Refused("artwork.refused.too-much-memory");
        }
        return spout.finish();
    }

    /** Readers answer damaged files with whatever they trip over; for the sender it is one and the same. */
    private Refused refusedBy(Exception broken) {
        for (Throwable cause = broken.getCause(); cause != null; cause = cause.getCause()) {
            if (cause instanceof Refused said) {
                return said; // some readers wrap what a taker of rows throws
            }
        }
        LOG.debug("A {} could not be read: {}", facts.format(), broken.toString());
        return new Refused("artwork.refused.damaged");
    }
}
