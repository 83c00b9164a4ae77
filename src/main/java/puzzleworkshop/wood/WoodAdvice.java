package puzzleworkshop.wood;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.boards.BlanksWaiting;
import puzzleworkshop.boards.WaitingBlank;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.RackShapes;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.wood.asked.AskedFor;
import puzzleworkshop.wood.asked.BoardKindAsked;
import puzzleworkshop.workshop.Workshop;

/** What wood did month by month, which pieces to give away and which boards to order. Proposes; changes nothing but its rules. */
@Service
public class WoodAdvice {

    private static final int MOST_SHEETS = 5_000;
    private static final int MONTHS = 12;
    private static final int WEEKS_OF_KINDS = 26;
    private static final int LEAST_BLANKS_OF_A_KIND = 5;

    /** All that an order of boards depends on. */
    private record BuyQuestion(
            LocalDate day,
            Object asked,
            String rack,
            WoodRules rules,
            List<BoardOffer> offers,
            Map<Long, Dealing> dealers,
            List<BlankWish> waiting,
            List<OnTheWay> onTheWay) {}

    private final VersionedCache<BuyQuestion, List<BuyAdvice>> advised = VersionedCache.ofMost(4);
    private final WoodStore store;
    private final AskedFor asked;
    private final SheetRack rack;
    private final RackShapes shapes;
    private final RackSettings settings;
    private final KeepOrGo keeping;
    private final Workshop workshop;
    private final BoardOrders orders;
    private final Dealers dealers;
    private final BlanksWaiting blanks;
    private final BoardsOnTheWay onTheWay;

    WoodAdvice(
            WoodStore store,
            AskedFor asked,
            SheetRack rack,
            RackShapes shapes,
            RackSettings settings,
            KeepOrGo keeping,
            Workshop workshop,
            BoardOrders orders,
            Dealers dealers,
            BlanksWaiting blanks,
            BoardsOnTheWay onTheWay) {
        this.store = store;
        this.asked = asked;
        this.rack = rack;
        this.shapes = shapes;
        this.settings = settings;
        this.keeping = keeping;
        this.workshop = workshop;
        this.orders = orders;
        this.dealers = dealers;
        this.blanks = blanks;
        this.onTheWay = onTheWay;
    }

    @Transactional(readOnly = true)
    public WoodRules rules() {
        return store.rules();
    }

    @Transactional
    public void save(WoodRules rules) {
        store.save(rules);
    }

    /** The last twelve months with wood in them, oldest first. */
    @Transactional(readOnly = true)
    public List<MonthOfWood> months() {
        return store.months(
                YearMonth.from(workshop.today()).minusMonths(MONTHS - 1L), workshop.zone(), workshop.currency());
    }

    /** The pieces that will be missed least, as many as the rack has too many. May take a second: not on the screen's thread. */
    @Transactional(readOnly = true)
    public KeepAdvice keep() {
        return keeping.advise(free(), shapes.lying(), store.rules().mostPieces());
    }

    private List<Sheet> free() {
        RackFilter filter =
                new RackFilter("", Optional.empty(), Optional.empty(), Optional.empty(), Set.of(SheetState.FREE));
        return rack.list(filter, 0, MOST_SHEETS);
    }

    /** For each kind of board that was asked for lately. May take some seconds: not on the screen's thread. */
    @Transactional(readOnly = true)
    public List<BuyAdvice> buy() {
        BuyQuestion question = new BuyQuestion(
                workshop.today(),
                asked.version(),
                rack.stamp(),
                store.rules(),
                settings.offers(),
                dealers.all(),
                blanks.waiting().stream().map(WaitingBlank::wish).toList(),
                onTheWay.all());
        return advised.get(question, () -> worked(question));
    }

    private List<BuyAdvice> worked(BuyQuestion question) {
        Map<BoardKindAsked, Long> kinds = asked.kindsSince(question.day().minusWeeks(WEEKS_OF_KINDS));
        return kinds.entrySet().stream()
                .filter(kind -> kind.getValue() >= LEAST_BLANKS_OF_A_KIND)
                .sorted(Map.Entry.<BoardKindAsked, Long>comparingByValue().reversed())
                .map(kind -> orders.advise(kind.getKey(), question.waiting(), question.onTheWay()))
                .flatMap(Optional::stream)
                .toList();
    }
}
