package puzzleworkshop.artwork.pixels;

import java.awt.color.ICC_Profile;
import java.util.Optional;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.measure.Refused;

/** Where the readers pour their rows: counts them, so that a file which stops half way is noticed. */
public final class DecodedRowSink {

    private final ImageHeader facts;
    private final Pixels.TakerFor maker;
    private Pixels.Channels channels;
    private RowTaker taker;
    private int rows;

    DecodedRowSink(ImageHeader facts, Pixels.TakerFor maker) {
        this.facts = facts;
        this.maker = maker;
    }

    /** Rows will have so many channels in the file's own colour space. */
    public void open(int count) {
        Optional<ICC_Profile> profile = facts.icc().flatMap(Profiles::parse).filter(p -> p.getNumComponents() == count);
        open(count, ScreenColours.of(count, profile));
    }

    /** Rows will have the screen's own colours. */
    public void openScreenColours() {
        open(3, ScreenColours.of(3, Optional.empty()));
    }

    private void open(int count, ScreenColours colours) {
        if (channels != null && channels.count() != count) {
            throw new Refused("artwork.refused.damaged");
        }
        if (channels == null) {
            channels = new Pixels.Channels(count, colours);
            taker = maker.with(channels);
        }
    }

    int rows() {
        return rows;
    }

    public void row(int y, byte[] samples) {
        if (y != rows || y >= facts.storedHeight()) {
            throw new IllegalStateException("Row " + y + " after " + rows);
        }
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
