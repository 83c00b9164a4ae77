package puzzleworkshop.wood;

import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.wood.ahead.ByLearnedWorth;
import puzzleworkshop.wood.ahead.LearnedWorth;
import puzzleworkshop.wood.ahead.WoodPeers;
import puzzleworkshop.wood.asked.AskedBlank;
import puzzleworkshop.wood.asked.AskedFor;
import puzzleworkshop.wood.asked.AskedRates;
import puzzleworkshop.wood.asked.AskedSize;
import puzzleworkshop.wood.asked.BoardKindAsked;
import puzzleworkshop.wood.asked.Demand;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodCase;
import puzzleworkshop.wood.play.WoodPeriod;
import puzzleworkshop.wood.play.WoodPlay;
import puzzleworkshop.wood.play.WoodPolicy;
import puzzleworkshop.wood.play.WoodState;
import puzzleworkshop.workshop.Workshop;

/**
 * Plays the past year's real blanks again, kind of board by kind of board, on the boards that can be bought today: by nearest
 * fit, by the rule that proposes sheets here, and by a plan that looks ahead when it buys as well.
 */
@Service
public class YearAgain {

    private static final int WEEKS = 52;
    private static final int LEAST_WEEKS = 8;
    private static final int MOST_BLANKS = 4_000;
    private static final int OF_EACH = 5;
    private static final long SEED = 282;

    /** One kind of board with its weeks, and the days on which they begin. */
    private record Year(WoodCase woodCase, List<LocalDate> weeks, List<Demand.Blank> blanks) {}

    private final WoodStore store;
    private final AskedFor asked;
    private final BoardsForSale forSale;
    private final RackSettings settings;
    private final Workshop workshop;

    YearAgain(WoodStore store, AskedFor asked, BoardsForSale forSale, RackSettings settings, Workshop workshop) {
        this.store = store;
        this.asked = asked;
        this.forSale = forSale;
        this.settings = settings;
        this.workshop = workshop;
    }

    /** Takes some seconds to a minute: not on the screen's thread. Empty: no boards to buy, or less than eight weeks of orders. */
    @Transactional(readOnly = true)
    public Optional<Replay> replay() {
        List<Year> years = years();
        if (years.isEmpty()) {
            return Optional.empty();
        }
        Played nearest = new Played();
        Played here = new Played();
        Played ahead = new Played();
        for (Year year : years) {
            nearest.add(year, WoodPeers.nearest());
            here.add(year, asHere(year));
            ahead.add(year, WoodPeers.lookWeeksAhead(SEED));
        }
        int lost = (int) nearest.byWeek.entrySet().stream()
                .filter(week -> here.byWeek.get(week.getKey()) > week.getValue())
                .count();
        int blanks = years.stream().mapToInt(year -> year.blanks().size()).sum();
        return Optional.of(new Replay(
                nearest.byWeek.size(), blanks, years.size(), nearest.told(), here.told(), ahead.told(), lost));
    }

    /** What one rule paid, summed over the kinds. */
    private final class Played {

        private long cost;
        private int stranded;
        private final Map<LocalDate, Long> byWeek = new TreeMap<>();

        void add(Year year, WoodPolicy policy) {
            WoodPlay.Result result = WoodPlay.play(year.woodCase(), policy);
            cost += result.cost();
            stranded += result.stranded();
            for (int week = 0; week < year.weeks().size(); week++) {
                List<ForSale> offers = year.woodCase().periods().get(week).offers();
                long paid = result.decisions().get(week).bought().stream()
                        .mapToLong(offer -> offers.get(offer).cost())
                        .sum();
                byWeek.merge(year.weeks().get(week), paid, Long::sum);
            }
        }

        Replay.Rule told() {
            return new Replay.Rule(Money.of(BigDecimal.valueOf(cost, 2), workshop.currency()), stranded);
        }
    }

    /** The rule that proposes sheets, with the demand learned from the weeks before. */
    private WoodPolicy asHere(Year year) {
        UsefulSizes useful = settings.sizes();
        return new ByLearnedWorth(
                useful,
                state -> learned(year, state, useful.rungs()),
                LearnedLadder::inSteps,
                store.rules().weeksAhead(),
                LearnedLadder.SEED);
    }

    private static Optional<List<LearnedWorth.Asked>> learned(Year year, WoodState state, List<Size> rungs) {
        LocalDate day = year.weeks().get(state.past().size());
        List<Demand.Blank> before = year.blanks().stream()
                .filter(blank -> blank.day().isBefore(day))
                .toList();
        return before.size() < LearnedLadder.LEAST_BLANKS
                ? Optional.empty()
                : Optional.of(AskedRates.of(
                        Demand.learn(before, List.of(), day).stream()
                                .map(AskedSize::of)
                                .toList(),
                        rungs));
    }

    private List<Year> years() {
        LocalDate monday = workshop.today().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        Map<BoardKindAsked, List<Demand.Blank>> kinds = asked.since(monday.minusWeeks(WEEKS)).stream()
                .limit(MOST_BLANKS)
                .collect(Collectors.groupingBy(
                        AskedBlank::kind, Collectors.mapping(AskedBlank::blank, Collectors.toList())));
        double all = kinds.values().stream().mapToInt(List::size).sum();
        List<Year> years = new ArrayList<>();
        kinds.forEach((kind, blanks) -> {
            int room = (int) Math.max(1, Math.round(store.rules().mostPieces() * blanks.size() / all));
            year(kind, blanks, room).ifPresent(years::add);
        });
        return years;
    }

    private Optional<Year> year(BoardKindAsked kind, List<Demand.Blank> blanks, int room) {
        List<ForSale> offers = forSale.of(kind).stream()
                .map(BoardsForSale::forSale)
                .distinct()
                .flatMap(board -> Collections.nCopies(OF_EACH, board).stream())
                .toList();
        TreeMap<LocalDate, List<Wanted>> weeks = new TreeMap<>();
        for (Demand.Blank blank : blanks) {
            weeks.computeIfAbsent(
                            blank.day().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY)),
                            day -> new ArrayList<>())
                    .add(AskedRates.wanted(blank.size()));
        }
        if (offers.isEmpty() || weeks.size() < LEAST_WEEKS) {
            return Optional.empty();
        }
        List<Wanted> usual =
                settings.standardBlanks().stream().map(AskedRates::wanted).toList();
        List<WoodPeriod> periods = weeks.values().stream()
                .map(wanted -> new WoodPeriod(offers, wanted))
                .toList();
        return Optional.of(new Year(
                new WoodCase(kind.material(), true, room, usual, periods), List.copyOf(weeks.keySet()), blanks));
    }
}
