package puzzleworkshop.wood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.measure.Size;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.sheets.RackShapes;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.RemainderWorth;
import puzzleworkshop.wood.ahead.LearnedWorth;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Wanted;

/**
 * Worth of remainders by looking ahead over the next weeks: what pieces of each useful size are expected to save in boards
 * bought, with this demand and this rack. Worked out once for each state of the rack; the same state, the same answer.
 */
@Component
class LearnedLadder implements RemainderWorth {

    /** From so few blanks nothing is learned that the usual sizes don't say. */
    static final int LEAST_BLANKS = 20;

    /** More pieces of a size than any weeks could ask for are all the same. */
    private static final int MOST_OF_A_SIZE = 12;

    /** Worths are told in steps, so that one more order does not change every shape's value. */
    private static final double STEP = 0.05;

    /** What a piece of use is worth at least: it may come in handy. */
    private static final double LEAST_WORTH = 0.05;

    private static final int MOST_KINDS_OF_BOARD = 3;
    private static final int OF_EACH = 3;
    private static final long SEED = 280;

    /** All that the answer depends on. */
    private record Question(List<Size> rungs, List<Integer> pieces, String demand, List<ForSale> offers, int weeks) {}

    private final AskedFor asked;
    private final WoodStore store;
    private final RackSettings rack;
    private final RackShapes shapes;
    private final VersionedCache<Question, Ladder> known = VersionedCache.ofMost(64);

    LearnedLadder(AskedFor asked, WoodStore store, RackSettings rack, RackShapes shapes) {
        this.asked = asked;
        this.store = store;
        this.rack = rack;
        this.shapes = shapes;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Ladder> ladder() {
        List<AskedSize> sizes = asked.sizes();
        List<ForSale> offers = offers();
        boolean corrected = sizes.stream().anyMatch(size -> size.corrected().isPresent());
        if (offers.isEmpty() || asked.seen(sizes) < LEAST_BLANKS && !corrected) {
            return Optional.empty();
        }
        UsefulSizes ladder = rack.sizes();
        int[] pieces = new int[ladder.rungs().size()];
        for (Profile shape : shapes.free(ladder)) {
            if (shape.rung() != UsefulSizes.SCRAP) {
                pieces[shape.rung()] = Math.min(MOST_OF_A_SIZE, pieces[shape.rung()] + 1);
            }
        }
        int weeks = store.rules().weeksAhead();
        List<LearnedWorth.Asked> rates = rates(sizes);
        Question question =
                new Question(ladder.rungs(), Arrays.stream(pieces).boxed().toList(), rates.toString(), offers, weeks);
        return Optional.of(known.get(question, () -> work(ladder, pieces, rates, offers, weeks)));
    }

    private static Ladder work(
            UsefulSizes ladder, int[] pieces, List<LearnedWorth.Asked> rates, List<ForSale> offers, int weeks) {
        List<Wanted> rungs = ladder.rungs().stream().map(LearnedLadder::wanted).toList();
        double[] worth = LearnedWorth.of(rungs, pieces, rates, offers, weeks, SEED);
        double[] steps = Arrays.stream(worth)
                .map(w -> Math.max(LEAST_WORTH, Math.round(w / STEP) * STEP))
                .toArray();
        List<Double> expected = new ArrayList<>();
        for (int rung = 0; rung < rungs.size(); rung++) {
            int here = rung;
            expected.add(weeks
                    * rates.stream()
                            .filter(size -> smallestFor(rungs, size.size()) == here)
                            .mapToDouble(LearnedWorth.Asked::perWeek)
                            .sum());
        }
        return new Ladder(ladder.worth(steps), weeks, expected);
    }

    /** The first rung that holds the size; -1 when none does. */
    private static int smallestFor(List<Wanted> rungs, Wanted size) {
        return IntStream.range(0, rungs.size())
                .filter(rung -> rungs.get(rung).width() >= size.width()
                        && rungs.get(rung).height() >= size.height())
                .findFirst()
                .orElse(-1);
    }

    /** In whole hundredths a week, so that the demand of one day is one state. */
    static List<LearnedWorth.Asked> rates(List<AskedSize> sizes) {
        return sizes.stream()
                .map(size -> new LearnedWorth.Asked(wanted(size.size()), Math.round(size.perWeek() * 20) / 20.0))
                .filter(size -> size.perWeek() > 0)
                .limit(24)
                .toList();
    }

    private List<ForSale> offers() {
        List<ForSale> boards = new ArrayList<>();
        rack.offers().stream()
                .filter(BoardOffer::offered)
                .map(LearnedLadder::forSale)
                .distinct()
                .limit(MOST_KINDS_OF_BOARD)
                .forEach(board -> boards.addAll(java.util.Collections.nCopies(OF_EACH, board)));
        return boards;
    }

    /** Cost in hundredths of the currency's unit. */
    static ForSale forSale(BoardOffer offer) {
        return new ForSale(
                (int) Math.floor(offer.size().longerSide().mm()),
                (int) Math.floor(offer.size().shorterSide().mm()),
                Math.max(1, Math.round(offer.price().amount().doubleValue() * 100)));
    }

    /** Longer side across; whole millimetres, rounded up. */
    static Wanted wanted(Size size) {
        return new Wanted((int) Math.ceil(size.longerSide().mm() - 1e-6), (int)
                Math.ceil(size.shorterSide().mm() - 1e-6));
    }
}
