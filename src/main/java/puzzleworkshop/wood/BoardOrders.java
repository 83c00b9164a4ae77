package puzzleworkshop.wood;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.RackShapes;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.wood.ahead.BoardsToBuy;
import puzzleworkshop.wood.ahead.LearnedWorth;
import puzzleworkshop.wood.asked.AskedFor;
import puzzleworkshop.wood.asked.AskedRates;
import puzzleworkshop.wood.asked.BoardKindAsked;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.workshop.Workshop;

/** Which boards of one kind to order, how many and when, by what is asked for on that kind and what lies in the rack. */
@Component
class BoardOrders {

    private static final int MOST_CUT = 2;
    private static final int MOST_PIECES_PLAYED = 150;
    private static final int DAYS_OF_WEEK = 7;
    private static final long SEED = 281;

    /** A board, or a piece of a size asked for that its dealer cuts from it. */
    private record Choice(BoardOffer board, Optional<Size> cutTo, Money price, int weeks) {

        BoardsToBuy.Dealt dealt() {
            Wanted size = cutTo.map(AskedRates::wanted).orElseGet(() -> AskedRates.piece(board.size()));
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
    private final RackShapes shapes;
    private final RackSettings settings;
    private final BoardsForSale forSale;
    private final Workshop workshop;

    BoardOrders(
            WoodStore store,
            AskedFor asked,
            Dealers dealers,
            RackShapes shapes,
            RackSettings settings,
            BoardsForSale forSale,
            Workshop workshop) {
        this.store = store;
        this.asked = asked;
        this.dealers = dealers;
        this.shapes = shapes;
        this.settings = settings;
        this.forSale = forSale;
        this.workshop = workshop;
    }

    /**
     * @param waiting blanks of confirmed orders that no sheet is held for
     * @return empty when no board of the kind can be bought
     */
    Optional<BuyAdvice> advise(BoardKindAsked kind, List<BlankWish> waiting, List<OnTheWay> onTheWay) {
        WoodRules rules = store.rules();
        List<LearnedWorth.Asked> rates =
                AskedRates.of(asked.sizes(kind), settings.sizes().rungs());
        List<Choice> choices = choices(kind, rates, rules);
        if (choices.isEmpty()) {
            return Optional.empty();
        }
        List<BoardsToBuy.Dealt> dealt = choices.stream().map(Choice::dealt).toList();
        List<LearnedWorth.Asked> served =
                rates.stream().filter(size -> isGiven(size.size(), dealt)).toList();
        List<Wanted> wait = waiting.stream()
                .filter(wish -> forSale.wouldDo(kind, wish))
                .map(wish -> AskedRates.wanted(wish.size()))
                .filter(size -> isGiven(size, dealt))
                .toList();
        BoardsToBuy.Stock stock = new BoardsToBuy.Stock(pieces(kind), coming(kind, onTheWay), wait);
        Optional<BoardsToBuy.Advice> advice =
                BoardsToBuy.advise(dealt, stock, served, rules.servicePercent() / 100, SEED);
        return Optional.of(new BuyAdvice(
                kind,
                asked.name(kind),
                IntStream.range(0, choices.size())
                        .mapToObj(i -> line(choices.get(i), advice, i))
                        .toList(),
                advice.isPresent(),
                rates.size() - served.size(),
                wait.size(),
                stock.onTheWay().size(),
                hundredths(advice.map(BoardsToBuy.Advice::cost).orElse(0L)),
                percent(advice.map(BoardsToBuy.Advice::service).orElse(0.0)),
                percent(advice.map(BoardsToBuy.Advice::without).orElse(0.0)),
                orderBy(choices, advice)));
    }

    private static boolean isGiven(Wanted size, List<BoardsToBuy.Dealt> dealt) {
        return dealt.stream()
                .anyMatch(choice ->
                        size.fits(choice.board().width(), choice.board().height()));
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
        Map<Long, Dealing> dealing = dealers.all();
        List<Choice> whole = new ArrayList<>();
        List<Choice> cut = new ArrayList<>();
        for (BoardOffer board : forSale.of(kind)) {
            Dealing how = dealing.getOrDefault(board.id(), Dealing.usual(board.id()));
            int weeks = how.deliveryWeeks().orElse(rules.deliveryWeeks());
            whole.add(new Choice(board, Optional.empty(), board.price(), weeks));
            Wanted all = AskedRates.piece(board.size());
            how.cutFee()
                    .ifPresent(fee -> rates.stream()
                            .map(LearnedWorth.Asked::size)
                            .filter(size -> size.fits(all.width(), all.height()))
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

    /** The largest rectangle of each free sheet of the kind, largest first. */
    private List<Wanted> pieces(BoardKindAsked kind) {
        return shapes.free(forSale.wish(kind), settings.rules().thicknessSlack()).stream()
                .map(AskedRates::piece)
                .sorted(Comparator.comparingLong(Wanted::area)
                        .thenComparingInt(Wanted::width)
                        .reversed())
                .limit(MOST_PIECES_PLAYED)
                .toList();
    }

    /** What is late is expected next week. */
    private List<BoardsToBuy.OnTheWay> coming(BoardKindAsked kind, List<OnTheWay> onTheWay) {
        LocalDate today = workshop.today();
        return onTheWay.stream()
                .filter(order -> forSale.wouldDo(
                        new BoardKindAsked(
                                order.board().material(),
                                order.board().grade().name(),
                                order.board().thickness()),
                        forSale.wish(kind)))
                .flatMap(order -> {
                    long days = ChronoUnit.DAYS.between(today, order.due());
                    int weeks = days < 0 ? 1 : (int) (days / DAYS_OF_WEEK);
                    return Collections.nCopies(
                            order.count(), new BoardsToBuy.OnTheWay(AskedRates.piece(order.size()), weeks))
                            .stream();
                })
                .toList();
    }

    private Money hundredths(long hundredths) {
        return Money.of(BigDecimal.valueOf(hundredths, 2), workshop.currency());
    }

    private static Percent percent(double share) {
        return Percent.of(Math.round(share * 100));
    }
}
