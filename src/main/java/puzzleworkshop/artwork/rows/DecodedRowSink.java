package puzzleworkshop.artwork.rows;

import java.awt.color.ICC_Profile;
import java.util.Optional;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.Profiles;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.WorkLimit;

/** Where the readers pour their rows: counts them, so that a file which stops half way is noticed. */
public final class DecodedRowSink {

    private final ImageHeader facts;
    private final Pixels.TakerFor maker;
    private final WorkLimit limit;
    private Pixels.Channels channels;
    private RowTaker taker;
    private int rows;

    DecodedRowSink(ImageHeader facts, Pixels.TakerFor maker, WorkLimit limit) {
        this.facts = facts;
        this.maker = maker;
        this.limit = limit;
    }

    /** Rows will have so many channels in the file's own colour space. */
    public void open(int count) {
        open(count, true);
    }

    /** Rows will have the screen's own colours. */
    public void openScreenColours() {
        open(3, false);
    }

    private void open(int count, boolean own) {
        if (channels != null && channels.count() != count) {
            throw new Refused("artwork.refused.damaged");
        }
        if (channels == null) {
            channels = channels(facts, count, own);
            taker = maker.with(channels);
        }
    }

    /** @param own the file's own channels, to which its profile belongs if it has so many */
    public static Pixels.Channels channels(ImageHeader facts, int count, boolean own) {
        Optional<ICC_Profile> profile = own
                ? facts.icc().flatMap(Profiles::parse).filter(p -> p.getNumComponents() == count)
                : Optional.empty();
        return new Pixels.Channels(count, ScreenColours.of(count, profile), own);
    }

    int rows() {
        return rows;
    }

    public void row(int y, byte[] samples) {
        if (y != rows || y >= facts.storedHeight()) {
            throw new IllegalStateException("Row " + y + " after " + rows);
        }
        limit.look();
        taker.row(y, samples);
        rows++;
    }

    Pixels.Channels finish() {
        if (rows != facts.storedHeight()) {
            throw new Refused("artwork.refused.cut-short");
        }
        return channels;
    }
}
