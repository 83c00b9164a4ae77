package puzzleworkshop.sheets;

import java.time.Clock;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.sheets.board.BoardFacts;

/**
 * Outlines that were measured in photos. A sheet is taken in with its outline shrunk by what the photo leaves unsure, so that a
 * blank found on it fits the real board; when somebody has held a ruler to it, it gets the outline as measured.
 */
@Service
@Transactional
public class MeasuredOutlines {

    private static final double LINE_MM = 100;

    private final MeasuredStore store;
    private final SheetRack rack;
    private final SheetStore sheets;
    private final Bookings bookings;
    private final Clock clock;

    MeasuredOutlines(MeasuredStore store, SheetRack rack, SheetStore sheets, Bookings bookings, Clock clock) {
        this.bookings = bookings;
        this.store = store;
        this.rack = rack;
        this.sheets = sheets;
        this.clock = clock;
    }

    /** Length of the printed 100 mm line by the ruler; empty until somebody has said it. */
    @Transactional(readOnly = true)
    public Optional<Length> printedLine() {
        return store.line().map(Length::mm);
    }

    /** By how much the printer changed the size: 1 when it kept it. */
    @Transactional(readOnly = true)
    public double printScale() {
        return store.line().orElseThrow(() -> new Refused("sheets.photo.line.first")) / LINE_MM;
    }

    /** @throws Refused when the line is off by more than a tenth */
    public void confirmPrint(Length line, String who) {
        if (line == null || line.mm() < 90 || line.mm() > 110) {
            throw new Refused("camera.sheet.scale");
        }
        store.line(line.mm(), who, clock.instant());
    }

    /** Takes in a measured board, once. Otherwise as {@link #add}. */
    @Books
    public SheetId enter(
            BookingKey key, Outline outline, double uncertaintyMm, BoardFacts facts, Money cost, String who) {
        return bookings.once(
                key,
                "enter a measured board of " + outline.area() + ", " + uncertaintyMm + ", " + facts + ", " + cost,
                () -> add(outline, uncertaintyMm, facts, cost, who),
                SheetId::value,
                SheetId::new);
    }

    /**
     * Takes a measured board in.
     *
     * @param outline as measured
     * @param uncertaintyMm by which it is shrunk until it is confirmed
     */
    public SheetId add(Outline outline, double uncertaintyMm, BoardFacts facts, Money cost, String who) {
        SheetId id = rack.add(outline.shrunkBy(uncertaintyMm), facts, cost, who);
        store.add(id, outline.atOrigin(), uncertaintyMm, who, clock.instant());
        return id;
    }

    /** By how much a sheet's outline is smaller than measured, while nobody has confirmed it. */
    @Transactional(readOnly = true)
    public Optional<Length> unconfirmed(SheetId id) {
        return store.unconfirmed(id).map(waiting -> Length.mm(waiting.uncertaintyMm()));
    }

    /** The ruler agrees: the sheet gets its outline as measured. */
    public void confirm(SheetId id, String who) {
        MeasuredStore.Waiting waiting =
                store.unconfirmed(id).orElseThrow(() -> new Refused("sheets.photo.nothingtoconfirm", id.toString()));
        sheets.locked(id);
        rack.reshape(id, waiting.outline(), sheets.get(id).version(), who);
        store.confirm(id, who, clock.instant());
    }
}
