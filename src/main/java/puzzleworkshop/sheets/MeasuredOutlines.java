package puzzleworkshop.sheets;

import java.time.Clock;
import java.util.List;
import java.util.Map;
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
    private static final int LONGEST_NAME = 60;

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

    /**
     * A printer whose measuring sheets were held to a ruler.
     *
     * @param name as the workshop calls it; empty for one confirmed before printers had names
     * @param line length of its 100 mm line
     */
    public record Printer(String name, Length line) {

        /** By how much the printer changed the size: 1 when it kept it. */
        public double scale() {
            return line.mm() / LINE_MM;
        }
    }

    /** All of them, the one confirmed last first; empty until somebody has held a ruler to a sheet. */
    @Transactional(readOnly = true)
    public List<Printer> printers() {
        return store.printers();
    }

    /**
     * @param name at most 60 characters; a printer confirmed again gets its new length
     * @throws Refused when the line is off by more than a tenth, or the name is too long
     */
    public Printer confirmPrint(String name, Length line, String who) {
        if (line == null || line.mm() < 90 || line.mm() > 110) {
            throw new Refused("camera.sheet.scale");
        }
        String known = name.strip();
        if (known.length() > LONGEST_NAME) {
            throw new Refused("sheets.photo.printer.long", LONGEST_NAME);
        }
        store.line(known, line.mm(), who, clock.instant());
        return new Printer(known, line);
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

    /** The outlines, as measured, of all sheets that nobody has held a ruler to. */
    @Transactional(readOnly = true)
    public Map<SheetId, Outline> unconfirmedOutlines() {
        return store.unconfirmed();
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
