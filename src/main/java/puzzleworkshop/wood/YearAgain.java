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
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.wood.ahead.WoodPeers;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodCase;
import puzzleworkshop.wood.play.WoodPeriod;
import puzzleworkshop.wood.play.WoodPlay;
import puzzleworkshop.workshop.Workshop;

/** Plays the past year's real blanks again, looking ahead and by nearest fit, on the boards that can be bought today. */
@Service
public class YearAgain {

    private static final int WEEKS = 52;
    private static final int LEAST_WEEKS = 8;
    private static final int MOST_BLANKS = 4_000;
    private static final int MOST_BOARDS = 3;
    private static final int OF_EACH = 5;
    private static final long SEED = 282;

    private final WoodStore store;
    private final RackSettings settings;
    private final Workshop workshop;

    YearAgain(WoodStore store, RackSettings settings, Workshop workshop) {
        this.store = store;
        this.settings = settings;
        this.workshop = workshop;
    }

    /** Takes some seconds to a minute: not on the screen's thread. Empty: no boards to buy, or less than eight weeks of orders. */
    @Transactional(readOnly = true)
    public Optional<Replay> replay() {
        return made().map(woodCase -> {
            WoodPlay.Result nearest = WoodPlay.play(woodCase, WoodPeers.nearest());
            WoodPlay.Result ahead = WoodPlay.play(woodCase, WoodPeers.lookWeeksAhead(SEED));
            int lost = 0;
            for (int week = 0; week < woodCase.periods().size(); week++) {
                lost += paid(woodCase, ahead, week) > paid(woodCase, nearest, week) ? 1 : 0;
            }
            int blanks = woodCase.periods().stream()
                    .mapToInt(week -> week.blanks().size())
                    .sum();
            return new Replay(woodCase.periods().size(), blanks, money(nearest.cost()), money(ahead.cost()), lost);
        });
    }

    private static long paid(WoodCase woodCase, WoodPlay.Result result, int week) {
        List<ForSale> offers = woodCase.periods().get(week).offers();
        return result.decisions().get(week).bought().stream()
                .mapToLong(offer -> offers.get(offer).cost())
                .sum();
    }

    private Optional<WoodCase> made() {
        LocalDate monday = workshop.today().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
        List<ForSale> offers = new ArrayList<>();
        settings.offers().stream()
                .filter(offer -> offer.offered() && offer.price().currency().equals(workshop.currency()))
                .map(YearAgain::board)
                .distinct()
                .limit(MOST_BOARDS)
                .forEach(board -> offers.addAll(Collections.nCopies(OF_EACH, board)));
        Map<LocalDate, List<Wanted>> weeks = new TreeMap<>();
        int blanks = 0;
        for (WoodStore.Asked asked : store.asked(monday.minusWeeks(WEEKS), workshop.zone())) {
            LocalDate week = asked.blank().day().with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY));
            if (blanks++ < MOST_BLANKS) {
                weeks.computeIfAbsent(week, day -> new ArrayList<>())
                        .add(LearnedLadder.wanted(asked.blank().size()));
            }
        }
        if (offers.isEmpty() || weeks.size() < LEAST_WEEKS) {
            return Optional.empty();
        }
        List<Wanted> usual =
                settings.standardBlanks().stream().map(LearnedLadder::wanted).toList();
        List<WoodPeriod> periods = weeks.values().stream()
                .map(wanted -> new WoodPeriod(offers, wanted))
                .toList();
        return Optional.of(new WoodCase("year", true, store.rules().mostPieces(), usual, periods));
    }

    private static ForSale board(BoardOffer offer) {
        return LearnedLadder.forSale(offer);
    }

    private Money money(long hundredths) {
        return Money.of(BigDecimal.valueOf(hundredths, 2), workshop.currency());
    }
}
