package puzzleworkshop.wood;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.boards.BlanksWaiting;
import puzzleworkshop.boards.WaitingBlank;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.RemainderWorth;
import puzzleworkshop.sheets.find.SheetFinder;
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
    private final SheetFinder finder;
    private final RackSettings settings;
    private final RemainderWorth worth;
    private final Workshop workshop;
    private final BoardOrders orders;
    private final Dealers dealers;
    private final BlanksWaiting blanks;
    private final BoardsOnTheWay onTheWay;

    WoodAdvice(
            WoodStore store,
            AskedFor asked,
            SheetRack rack,
            SheetFinder finder,
            RackSettings settings,
            RemainderWorth worth,
            Workshop workshop,
            BoardOrders orders,
            Dealers dealers,
            BlanksWaiting blanks,
            BoardsOnTheWay onTheWay) {
        this.store = store;
        this.asked = asked;
        this.rack = rack;
        this.finder = finder;
        this.settings = settings;
        this.worth = worth;
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

    /** The pieces that will be missed least, as many as the rack has too many. */
    @Transactional(readOnly = true)
    public KeepAdvice keep() {
        List<Sheet> free = free();
        int room = store.rules().mostPieces();
        int tooMany = Math.max(0, free.size() - room);
        if (tooMany == 0) {
            return new KeepAdvice(free.size(), room, List.of());
        }
        Optional<RemainderWorth.Ladder> ladder = worth.ladder(List.of());
        UsefulSizes sizes = finder.sizes();
        List<Profile> shapes = finder.profiles(free, sizes);
        int[] onRung = new int[sizes.rungs().size()];
        shapes.stream().filter(shape -> shape.rung() >= 0).forEach(shape -> onRung[shape.rung()]++);
        List<KeepAdvice.Spare> spare = IntStream.range(0, free.size())
                .boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> shapes.get(i).value)
                        .thenComparing(i -> shapes.get(i).area)
                        .thenComparing(i -> free.get(i).id().value()))
                .limit(tooMany)
                .map(i -> new KeepAdvice.Spare(free.get(i), why(shapes.get(i), sizes, onRung, ladder)))
                .toList();
        return new KeepAdvice(free.size(), room, spare);
    }

    private static Sentence why(
            Profile shape, UsefulSizes sizes, int[] onRung, Optional<RemainderWorth.Ladder> ladder) {
        if (shape.rung() == UsefulSizes.SCRAP) {
            return Sentence.of("wood.keep.scrap", sizes.rung(0));
        }
        Size size = sizes.rung(shape.rung());
        return ladder.map(learned -> Sentence.of(
                        "wood.keep.spare",
                        size,
                        onRung[shape.rung()],
                        Long.toString(Math.round(learned.expected().get(shape.rung()))),
                        learned.weeks()))
                .orElseGet(() -> Sentence.of("wood.keep.smallest", size, onRung[shape.rung()]));
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
