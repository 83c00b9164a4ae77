package puzzleworkshop.offers;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.Offer.Question;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.workshop.TradeNumbers;

/**
 * One wish being worked out: what it asks, what the house knows, and what is wrong with it so far.
 *
 * @param before what was worked out on the same page so far
 * @param complaints added to while the parts are worked out
 * @param stillWanted throws as soon as another wish has come
 */
record WishAtWork(
        Wish wish,
        TradeNumbers numbers,
        Optional<Machine> machine,
        Remembered before,
        Map<Question, Sentence> complaints,
        Runnable stillWanted) {

    /** Below this a puzzle is a scrap of wood, above it no bed is that large. */
    private static final Length SMALLEST_SIDE = Length.mm(40);

    private static final Length LARGEST_SIDE = Length.mm(3000);
    private static final int MOST_PUZZLES = 500;

    void complain(Question about, Sentence what) {
        complaints.put(about, what);
    }

    /** The pattern the wish leads to. */
    PatternSpec spec() {
        return new PatternSpec(
                wish.puzzle().finished(),
                PieceGrid.within(
                        wish.puzzle().outline(),
                        wish.puzzle().finished(),
                        wish.puzzle().pieces(),
                        numbers.smallestPiece()),
                wish.puzzle().seed(),
                wish.puzzle().style(),
                wish.puzzle().outline(),
                wish.board().thickness(),
                machine.map(m -> m.beam().kerf()).orElse(PatternSpec.USUAL_KERF),
                wish.puzzle().shapes(),
                wish.puzzle().layout().isPlain() && !wish.puzzle().outline().isCurved()
                        ? wish.puzzle().design()
                        : PatternSpec.DESIGN,
                wish.puzzle().layout());
    }

    void checkWantedBy(LocalDate today) {
        wish.day()
                .wantedBy()
                .filter(day -> day.isBefore(today))
                .ifPresent(day -> complain(Question.WANTED_BY, Sentence.of("orders.date.past", day)));
    }

    boolean sizeIsPossible() {
        Size size = wish.puzzle().finished();
        if (size.shorterSide().compareTo(SMALLEST_SIDE) < 0 || size.longerSide().compareTo(LARGEST_SIDE) > 0) {
            complain(Question.SIZE, Sentence.of("offers.problem.size", SMALLEST_SIDE, LARGEST_SIDE));
            return false;
        }
        Size blank = numbers.blankFor(size);
        if (machine.isPresent() && !blank.fitsUpright(machine.get().bed())) {
            complain(
                    Question.SIZE,
                    Sentence.of(
                            "offers.problem.bed",
                            blank,
                            machine.get().name(),
                            machine.get().bed()));
            return false;
        }
        if (wish.quantity() < 1 || wish.quantity() > MOST_PUZZLES) {
            complain(Question.PIECES, Sentence.of("offers.problem.quantity", MOST_PUZZLES));
            return false;
        }
        return true;
    }

    <T> Optional<T> orComplain(Question question, Supplier<T> work) {
        try {
            return Optional.of(work.get());
        } catch (Refused refused) {
            complain(question, refused.sentence());
            return Optional.empty();
        }
    }
}
