package puzzleworkshop.wood;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.wood.ahead.BoardsToBuy;
import puzzleworkshop.wood.ahead.LearnedWorth;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.workshop.Workshop;

/** Which boards of one kind to order, how many and when, by what is asked for on that kind and what lies in the rack. */
@Component
class BoardOrders {

    private static final int MOST_BOARDS = 3;
    private static final int MOST_CUT = 2;
    private static final int MOST_PIECES_PLAYED = 150;
    private static final long SEED = 281;

    /** A board, or a piece of a size asked for that its dealer cuts from it. */
    private record Choice(BoardOffer board, Optional<Size> cutTo, Money price, int weeks) {

        BoardsToBuy.Dealt dealt() {
            Wanted size = LearnedLadder.wanted(cutTo.orElse(board.size()));
            long cost = price.amount()
                    .movePointRight(2)
                    .setScale(0, RoundingMode.HALF_UP)
                    .longValueExact();
            return new BoardsToBuy.Dealt(new ForSale(size.width(), size.height(), cost), weeks);
        }
    }

    private final WoodStore store;
    private final AskedFor asked;
    private final Dealers dealers;
    private final SheetFinder finder;
    private final RackSettings settings;
    private final Workshop workshop;

    BoardOrders(
            WoodStore store,
            AskedFor asked,
            Dealers dealers,
            SheetFinder finder,
            RackSettings settings,
            Workshop workshop) {
        this.store = store;
        this.asked = asked;
        this.dealers = dealers;
        this.finder = finder;
        this.settings = settings;
        this.workshop = workshop;
    }

    /** Empty when no board of the kind can be bought. */
    Optional<BuyAdvice> advise(BoardKindAsked kind, List<Sheet> free) {
        WoodRules rules = store.rules();
        List<LearnedWorth.Asked> rates = LearnedLadder.rates(asked.sizes(kind));
        List<Choice> choices = choices(kind, rates, rules);
        if (choices.isEmpty()) {
            return Optional.empty();
        }
        List<BoardsToBuy.Dealt> dealt = choices.stream().map(Choice::dealt).toList();
        long servable = rates.stream()
                .filter(size -> dealt.stream()
                        .anyMatch(choice -> size.size()
                                .fits(choice.board().width(), choice.board().height())))
                .count();
        Optional<BoardsToBuy.Advice> advice =
                BoardsToBuy.advise(dealt, pieces(kind, free), rates, rules.servicePercent() / 100, SEED);
        return Optional.of(new BuyAdvice(
                kind,
                asked.name(kind),
                IntStream.range(0, choices.size())
                        .mapToObj(i -> line(choices.get(i), advice, i))
                        .toList(),
                advice.isPresent(),
                (int) (rates.size() - servable),
                hundredths(advice.map(BoardsToBuy.Advice::cost).orElse(0L)),
                percent(advice.map(BoardsToBuy.Advice::service).orElse(0.0)),
                percent(advice.map(BoardsToBuy.Advice::without).orElse(0.0)),
                orderBy(choices, advice)));
    }

    private static BuyAdvice.Line line(Choice choice, Optional<BoardsToBuy.Advice> advice, int i) {
        return new BuyAdvice.Line(
                choice.board(),
                choice.cutTo(),
                choice.price(),
                choice.weeks(),
                advice.map(found -> found.counts().get(i)).orElse(0),
                advice.map(found -> found.breakEven().get(i))
                        .filter(OptionalLong::isPresent)
                        .map(price -> Money.of(
                                BigDecimal.valueOf(price.getAsLong(), 2),
                                choice.price().currency())));
    }

    /** The day when boards must be ordered because the rack alone will not do by the time they come. */
    private Optional<LocalDate> orderBy(List<Choice> choices, Optional<BoardsToBuy.Advice> advice) {
        int soonest = choices.stream().mapToInt(Choice::weeks).min().orElse(0);
        return advice.filter(found -> found.rackWeeks() < BoardsToBuy.WEEKS_OF_RACK)
                .map(found -> workshop.today().plusWeeks(Math.max(0, found.rackWeeks() - soonest)));
    }

    private List<Choice> choices(BoardKindAsked kind, List<LearnedWorth.Asked> rates, WoodRules rules) {
        List<BoardOffer> boards = settings.offers().stream()
                .filter(offer -> offer.offered()
                        && offer.material().equals(kind.material())
                        && offer.grade().name().equals(kind.grade())
                        && near(offer.thickness().mm(), kind)
                        && offer.price().currency().equals(workshop.currency()))
                .sorted(Comparator.comparing(BoardOffer::price).thenComparing(BoardOffer::id))
                .limit(MOST_BOARDS)
                .toList();
        Map<Long, Dealing> dealing = dealers.all();
        List<Choice> whole = new ArrayList<>();
        List<Choice> cut = new ArrayList<>();
        for (BoardOffer board : boards) {
            Dealing how = dealing.getOrDefault(board.id(), Dealing.usual(board.id()));
            int weeks = how.deliveryWeeks().orElse(rules.deliveryWeeks());
            whole.add(new Choice(board, Optional.empty(), board.price(), weeks));
            how.cutFee()
                    .ifPresent(fee -> rates.stream()
                            .map(LearnedWorth.Asked::size)
                            .filter(size -> size.fits(
                                    LearnedLadder.wanted(board.size()).width(),
                                    LearnedLadder.wanted(board.size()).height()))
                            .forEach(size -> cut.add(piece(board, size, fee, weeks))));
        }
        return Stream.concat(whole.stream(), cut.stream().limit(MOST_CUT)).toList();
    }

    /** Its share of the board by area, and the dealer's fee. */
    private static Choice piece(BoardOffer board, Wanted size, BigDecimal fee, int weeks) {
        double share = size.area() / board.size().area().mm2();
        Money price = board.price()
                .times(share)
                .plus(Money.of(fee, board.price().currency()))
                .rounded(RoundingMode.HALF_UP);
        return new Choice(board, Optional.of(Size.mm(size.width(), size.height())), price, weeks);
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
        return Money.of(BigDecimal.valueOf(hundredths, 2), workshop.currency());
    }

    private static Percent percent(double share) {
        return Percent.of(Math.round(share * 100));
    }
}
