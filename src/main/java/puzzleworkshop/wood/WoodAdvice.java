package puzzleworkshop.wood;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.sheets.RackFilter;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.Material;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.RemainderWorth;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.wood.ahead.BoardsToBuy;
import puzzleworkshop.wood.ahead.LearnedWorth;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.workshop.Workshop;

/** What wood did month by month, which pieces to give away and which boards to order. Proposes; changes nothing but its rules. */
@Service
public class WoodAdvice {

    private static final int MOST_SHEETS = 5_000;
    private static final int MONTHS = 12;
    private static final int WEEKS_OF_KINDS = 26;
    private static final int LEAST_BLANKS_OF_A_KIND = 5;
    private static final int MOST_BOARDS = 3;
    private static final int MOST_PIECES_PLAYED = 150;
    private static final long SEED = 281;

    /** All that an order of boards depends on. */
    private record BuyQuestion(
            LocalDate day, String asked, String rack, WoodRules rules, List<BoardOffer> offers, List<Size> usual) {}

    private final VersionedCache<BuyQuestion, List<BuyAdvice>> advised = VersionedCache.ofMost(4);
    private final WoodStore store;
    private final AskedFor asked;
    private final SheetRack rack;
    private final SheetFinder finder;
    private final RackSettings settings;
    private final RemainderWorth worth;
    private final Workshop workshop;

    WoodAdvice(
            WoodStore store,
            AskedFor asked,
            SheetRack rack,
            SheetFinder finder,
            RackSettings settings,
            RemainderWorth worth,
            Workshop workshop) {
        this.store = store;
        this.asked = asked;
        this.rack = rack;
        this.finder = finder;
        this.settings = settings;
        this.worth = worth;
        this.workshop = workshop;
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
        Optional<RemainderWorth.Ladder> ladder = worth.ladder();
        UsefulSizes sizes = finder.sizes();
        List<Profile> shapes = finder.profiles(free);
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
                settings.standardBlanks());
        return advised.get(question, this::worked);
    }

    private List<BuyAdvice> worked() {
        Map<BoardKindAsked, Long> kinds =
                store.asked(workshop.today().minusWeeks(WEEKS_OF_KINDS), workshop.zone()).stream()
                        .collect(Collectors.groupingBy(WoodStore.Asked::kind, Collectors.counting()));
        long all = kinds.values().stream().mapToLong(Long::longValue).sum();
        List<Sheet> free = free();
        return kinds.entrySet().stream()
                .filter(kind -> kind.getValue() >= LEAST_BLANKS_OF_A_KIND)
                .sorted(Map.Entry.<BoardKindAsked, Long>comparingByValue().reversed())
                .map(kind -> buy(kind.getKey(), (double) kind.getValue() / all, free))
                .flatMap(Optional::stream)
                .toList();
    }

    private Optional<BuyAdvice> buy(BoardKindAsked kind, double share, List<Sheet> free) {
        List<BoardOffer> boards = settings.offers().stream()
                .filter(offer -> offer.offered()
                        && offer.material().equals(kind.material())
                        && offer.grade().name().equals(kind.grade())
                        && near(offer.thickness().mm(), kind)
                        && offer.price().currency().equals(workshop.currency()))
                .sorted(Comparator.comparing(BoardOffer::price).thenComparing(BoardOffer::id))
                .limit(MOST_BOARDS)
                .toList();
        if (boards.isEmpty()) {
            return Optional.empty();
        }
        WoodRules rules = store.rules();
        List<LearnedWorth.Asked> rates = LearnedLadder.rates(asked.sizes()).stream()
                .map(size -> new LearnedWorth.Asked(size.size(), size.perWeek() * share))
                .toList();
        List<ForSale> offers = boards.stream().map(LearnedLadder::forSale).toList();
        List<LearnedWorth.Asked> servable = rates.stream()
                .filter(size -> offers.stream().anyMatch(board -> size.size().fits(board.width(), board.height())))
                .toList();
        Optional<BoardsToBuy.Advice> advice = BoardsToBuy.advise(
                offers, pieces(kind, free), rates, rules.deliveryWeeks(), rules.servicePercent() / 100, SEED);
        String material = settings.materials().stream()
                .filter(one -> one.id().equals(kind.material()))
                .map(Material::name)
                .findFirst()
                .orElse(kind.material());
        return Optional.of(new BuyAdvice(
                kind,
                material,
                IntStream.range(0, boards.size())
                        .mapToObj(i -> new BuyAdvice.Line(
                                boards.get(i),
                                advice.map(found -> found.counts().get(i)).orElse(0),
                                advice.flatMap(found -> found.breakEven().get(i).isPresent()
                                        ? Optional.of(hundredths(
                                                found.breakEven().get(i).getAsLong()))
                                        : Optional.empty())))
                        .toList(),
                advice.isPresent(),
                rates.size() - servable.size(),
                hundredths(advice.map(BoardsToBuy.Advice::cost).orElse(0L)),
                percent(advice.map(BoardsToBuy.Advice::service).orElse(0.0)),
                percent(advice.map(BoardsToBuy.Advice::without).orElse(0.0))));
    }

    /** The largest useful rectangle of each free sheet of the kind, largest first. */
    private List<Wanted> pieces(BoardKindAsked kind, List<Sheet> free) {
        List<Sheet> fit = free.stream()
                .filter(sheet -> sheet.facts().material().equals(kind.material())
                        && sheet.facts().grade().name().equals(kind.grade())
                        && sheet.facts().past().isFitForCutting()
                        && near(sheet.facts().thickness().mm(), kind))
                .toList();
        UsefulSizes sizes = settings.sizes();
        List<Wanted> pieces = new ArrayList<>();
        for (Profile shape : finder.profiles(fit)) {
            if (shape.rung() != UsefulSizes.SCRAP) {
                pieces.add(LearnedLadder.wanted(sizes.rung(shape.rung())));
            }
        }
        pieces.sort(Comparator.comparingLong(Wanted::area).reversed());
        return pieces.subList(0, Math.min(MOST_PIECES_PLAYED, pieces.size()));
    }

    private boolean near(double thickness, BoardKindAsked kind) {
        return Math.abs(thickness - kind.thickness().mm())
                <= settings.rules().thicknessSlack().mm() + 1e-9;
    }

    private Money hundredths(long hundredths) {
        return Money.of(java.math.BigDecimal.valueOf(hundredths, 2), workshop.currency());
    }

    private static Percent percent(double share) {
        return Percent.of(Math.round(share * 100));
    }
}
