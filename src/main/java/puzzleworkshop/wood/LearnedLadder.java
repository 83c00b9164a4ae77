package puzzleworkshop.wood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.sheets.RackShapes;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.RemainderWorth;
import puzzleworkshop.wood.ahead.ByLearnedWorth;
import puzzleworkshop.wood.ahead.LearnedWorth;
import puzzleworkshop.wood.asked.AskedFor;
import puzzleworkshop.wood.asked.AskedRates;
import puzzleworkshop.wood.asked.AskedSize;
import puzzleworkshop.wood.asked.BoardKindAsked;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Wanted;

/**
 * Worth of remainders by looking ahead over the next weeks: what pieces of each useful size are expected to save in boards
 * bought, with what is asked for on that kind of board, the pieces of that kind in the rack and the room it has. Calculated once
 * for each state; the same state, the same answer. Where several kinds would do, their worths are averaged, each counting as
 * much as it is asked for.
 */
@Component
class LearnedLadder implements RemainderWorth {

    /** From so few blanks of a kind nothing is learned that the usual sizes don't say. */
    static final int LEAST_BLANKS = 20;

    /** So many more pieces of a size than blanks that they could give are expected are all the same. */
    private static final double SURELY_ENOUGH = 1.3;

    private static final int SPARE_PIECES = 4;
    private static final int MOST_OF_A_SIZE = 40;

    /** A rack with so much more room than pieces is not full within the weeks that are looked ahead. */
    private static final int ROOM_ENOUGH = 60;

    private static final int ROOM_STEP = 5;

    /** Worths are told in steps, so that one more order does not change every shape's value. */
    private static final double STEP = 0.05;

    /** What a piece of use is worth at least: it may come in handy. */
    static final double LEAST_WORTH = 0.05;

    private static final int OF_EACH = 3;
    static final long SEED = 280;

    /** All that the answer depends on; room 0: enough. */
    private record Question(
            List<Size> rungs,
            List<Wanted> pieces,
            List<LearnedWorth.Asked> asked,
            List<ForSale> offers,
            int weeks,
            int room,
            boolean full) {}

    private record OfKind(Ladder ladder, double weight) {}

    private final AskedFor asked;
    private final WoodStore store;
    private final RackSettings rack;
    private final RackShapes shapes;
    private final BoardsForSale forSale;
    private final VersionedCache<Question, Ladder> known =
            VersionedCache.<Question, Ladder>ofMost(64).restingOnTheQuestion();

    LearnedLadder(AskedFor asked, WoodStore store, RackSettings rack, RackShapes shapes, BoardsForSale forSale) {
        this.asked = asked;
        this.store = store;
        this.rack = rack;
        this.shapes = shapes;
        this.forSale = forSale;
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<Ladder> ladder(Collection<BlankWish> wishes) {
        UsefulSizes useful = rack.sizes();
        List<OfKind> kinds = new ArrayList<>();
        asked.byKind().forEach((kind, sizes) -> {
            if (wishes.isEmpty() || wishes.stream().anyMatch(wish -> forSale.wouldDo(kind, wish))) {
                ofKind(kind, sizes, useful).ifPresent(kinds::add);
            }
        });
        return together(kinds, useful);
    }

    private static Optional<Ladder> together(List<OfKind> kinds, UsefulSizes useful) {
        if (kinds.size() <= 1) {
            return kinds.stream().findFirst().map(OfKind::ladder);
        }
        double all = kinds.stream().mapToDouble(OfKind::weight).sum();
        double[] worth = new double[useful.rungs().size()];
        Double[] expected = new Double[worth.length];
        Boolean[] needed = new Boolean[worth.length];
        for (int rung = 0; rung < worth.length; rung++) {
            int here = rung;
            worth[rung] = kinds.stream()
                    .mapToDouble(
                            kind -> kind.weight() / all * kind.ladder().sizes().value(1, here))
                    .sum();
            worth[rung] = rung == 0 ? worth[0] : Math.max(worth[rung], worth[rung - 1]);
            needed[rung] =
                    kinds.stream().anyMatch(kind -> kind.ladder().needed().get(here));
            expected[rung] = kinds.stream()
                    .mapToDouble(kind -> kind.ladder().expected().get(here))
                    .sum();
        }
        Ladder first = kinds.getFirst().ladder();
        return Optional.of(new Ladder(
                useful.worth(worth), first.weeks(), Arrays.asList(expected), Arrays.asList(needed), first.full()));
    }

    private Optional<OfKind> ofKind(BoardKindAsked kind, List<AskedSize> sizes, UsefulSizes useful) {
        boolean corrected = sizes.stream().anyMatch(size -> size.corrected().isPresent());
        int seen = sizes.stream().mapToInt(size -> size.learned().seen()).sum();
        List<ForSale> boards = forSale.of(kind).stream()
                .map(BoardsForSale::forSale)
                .distinct()
                .flatMap(board -> Collections.nCopies(OF_EACH, board).stream())
                .toList();
        if (boards.isEmpty() || seen < LEAST_BLANKS && !corrected) {
            return Optional.empty();
        }
        List<Wanted> rungs = useful.rungs().stream().map(AskedRates::wanted).toList();
        Length slack = rack.rules().thicknessSlack();
        WoodRules rules = store.rules();
        List<LearnedWorth.Asked> rates = AskedRates.of(sizes, useful.rungs());
        List<Wanted> pieces =
                fewOfEach(shapes.atLeast(forSale.wish(kind), slack, useful), rungs, rates, rules.weeksAhead());
        int lying = shapes.lying();
        // nobody throws away what lies there already; only what comes more may find no room
        int more = Math.max(0, rules.mostPieces() - lying) / ROOM_STEP * ROOM_STEP;
        Question question = new Question(
                useful.rungs(),
                pieces,
                rates,
                boards,
                rules.weeksAhead(),
                more >= ROOM_ENOUGH ? 0 : Math.max(1, pieces.size() + more),
                lying >= rules.mostPieces());
        double weight = sizes.stream().mapToDouble(AskedSize::perWeek).sum();
        return Optional.of(new OfKind(known.get(question, () -> work(useful, rungs, question)), weight));
    }

    /**
     * Rung by rung, largest first. Where more lie than could be cut into within the weeks they count as so many of just that size:
     * one more or less then changes nothing, and a full rack need not be played again after each cut.
     */
    private static List<Wanted> fewOfEach(
            List<Size> free, List<Wanted> rungs, List<LearnedWorth.Asked> asked, int weeks) {
        Map<Integer, List<Wanted>> lying = free.stream()
                .map(AskedRates::piece)
                .sorted(Comparator.comparingLong(Wanted::area)
                        .thenComparingInt(Wanted::width)
                        .reversed())
                .collect(Collectors.groupingBy(piece -> highestIn(rungs, piece)));
        List<Wanted> few = new ArrayList<>();
        double expected = 0;
        for (int rung = 0; rung < rungs.size(); rung++) {
            expected += expected(asked, rungs, rung, weeks);
            int most = (int) Math.min(MOST_OF_A_SIZE, Math.ceil(SURELY_ENOUGH * expected) + SPARE_PIECES);
            List<Wanted> here = lying.getOrDefault(rung, List.of());
            few.addAll(here.size() <= most ? here : Collections.nCopies(most, rungs.get(rung)));
        }
        return few;
    }

    /** How many blanks that need just this rung. */
    private static double expected(List<LearnedWorth.Asked> asked, List<Wanted> rungs, int rung, int weeks) {
        return asked.stream()
                .filter(size -> smallestFor(rungs, size.size()) == rung)
                .mapToDouble(
                        size -> IntStream.range(0, weeks).mapToDouble(size::in).sum())
                .sum();
    }

    private static Ladder work(UsefulSizes useful, List<Wanted> rungs, Question question) {
        double[] worth = LearnedWorth.of(
                rungs, question.pieces(), question.asked(), question.offers(), question.weeks(), question.room(), SEED);
        List<Double> expected = new ArrayList<>();
        for (int rung = 0; rung < rungs.size(); rung++) {
            expected.add(expected(question.asked(), rungs, rung, question.weeks()));
        }
        double[] steps = inSteps(worth);
        return new Ladder(
                useful.worth(steps),
                question.weeks(),
                expected,
                Arrays.stream(steps).mapToObj(step -> step > LEAST_WORTH + 1e-9).toList(),
                question.full());
    }

    static double[] inSteps(double[] worth) {
        return ByLearnedWorth.inSteps(worth, STEP, LEAST_WORTH);
    }

    /** The first rung that holds the size; -1 when none does. */
    private static int smallestFor(List<Wanted> rungs, Wanted size) {
        return IntStream.range(0, rungs.size())
                .filter(rung ->
                        size.fits(rungs.get(rung).width(), rungs.get(rung).height()))
                .findFirst()
                .orElse(-1);
    }

    /** The highest rung that lies in the piece; -1 when none does. */
    private static int highestIn(List<Wanted> rungs, Wanted piece) {
        return IntStream.iterate(rungs.size() - 1, rung -> rung >= 0, rung -> rung - 1)
                .filter(rung -> rungs.get(rung).fits(piece.width(), piece.height()))
                .findFirst()
                .orElse(-1);
    }
}
