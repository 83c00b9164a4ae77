package puzzleworkshop.wood;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardContamination;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Grain;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.workshop.Workshop;

/** Boards ordered from dealers, until they lie in the rack: as long as they are on their way, nobody is told to order them again. */
@Service
public class BoardsOnTheWay {

    private static final int MOST = 1000;

    private final BoardOrderStore store;
    private final RackSettings settings;
    private final SheetRack rack;
    private final Workshop workshop;
    private final Bookings bookings;
    private final Clock clock;

    BoardsOnTheWay(
            BoardOrderStore store,
            RackSettings settings,
            SheetRack rack,
            Workshop workshop,
            Bookings bookings,
            Clock clock) {
        this.store = store;
        this.settings = settings;
        this.rack = rack;
        this.workshop = workshop;
        this.bookings = bookings;
        this.clock = clock;
    }

    /** Those due first come first. */
    @Transactional(readOnly = true)
    public List<OnTheWay> all() {
        return store.open(settings.offers());
    }

    /**
     * The advised boards, or another number of them, were ordered.
     *
     * @param line of the advice: which board, at which price, due after how many weeks
     * @param count 1 to 1,000
     */
    @Books
    @Transactional
    public long ordered(BookingKey key, BuyAdvice.Line line, int count, String who) {
        if (count < 1 || count > MOST) {
            throw new Refused("wood.ordered.count");
        }
        LocalDate today = workshop.today();
        return bookings.once(
                key,
                "order " + count + " of board " + line.board().id() + " " + line.cutTo(),
                () -> store.add(line, count, today, today.plusWeeks(line.weeks()), who),
                id -> id,
                id -> id);
    }

    /**
     * They have come: each is entered in the rack with its price.
     *
     * @return how many lie there now
     */
    @Books
    @Transactional
    public int arrived(BookingKey key, long id, String place, String who) {
        return bookings.once(
                key,
                "boards of order " + id + " have come",
                () -> {
                    OnTheWay order = end(id, "ARRIVED");
                    for (int i = 0; i < order.count(); i++) {
                        rack.add(Outline.rectangle(order.size()), facts(order, place), order.price(), who);
                    }
                    return order.count();
                },
                Integer::longValue,
                Math::toIntExact);
    }

    /** They will not come, or were entered in the rack already. */
    @Books
    @Transactional
    public long notComing(BookingKey key, long id) {
        return bookings.once(
                key,
                "boards of order " + id + " do not come",
                () -> end(id, "NOT_COMING").id(),
                one -> one,
                one -> one);
    }

    private OnTheWay end(long id, String how) {
        OnTheWay order = all().stream()
                .filter(one -> one.id() == id)
                .findFirst()
                .orElseThrow(() -> new Refused("wood.ordered.gone"));
        if (!store.end(id, how, clock.instant())) {
            throw new Refused("wood.ordered.gone");
        }
        return order;
    }

    /** A piece cut to size may lie either way: its grain is looked at when it is entered by hand. */
    private static BoardFacts facts(OnTheWay order, String place) {
        BoardOffer board = order.board();
        BoardFacts clean = BoardFacts.clean(board.material(), board.grade(), board.thickness());
        return new BoardFacts(
                clean.material(),
                clean.grade(),
                clean.nominal(),
                clean.measured(),
                Length.ZERO,
                BoardContamination.CLEAN,
                order.cutTo().isPresent() ? Grain.NONE : board.grain(),
                place,
                "");
    }
}
