package puzzleworkshop.sheets.find;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.LargestRectangle;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.geometry.fit.Sawing;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;

/**
 * Which of the ways to saw what is left is worth most by what the next weeks will ask for, and why. Proposed, never done: a piece
 * that stays whole keeps every way open.
 */
final class HowToSaw {

    /** Less more than this is no reason to saw in another way. */
    private static final double LEAST_PERCENT = 1;

    private static final double HUNDRED = 100;

    private HowToSaw() {}

    /** The part with its rectangles in the order in which they are best sawn. */
    static Remainder.Part part(Remainder.Part part, List<Sawing> ways) {
        return ways.isEmpty()
                ? part
                : new Remainder.Part(part.outline(), ways.getFirst().pieces(), part.rung(), part.value());
    }

    static List<Sawing> ways(Remainder.Part part, UsefulSizes sizes) {
        return part.useful().size() < 2 ? List.of() : Sawing.ways(part.outline(), sizes);
    }

    /** Empty when there is nothing to saw. */
    static Optional<Sentence> reason(List<Sawing> ways, Remainder.Part sawn, Optional<RemainderWorth.Ladder> ladder) {
        if (ways.isEmpty()) {
            return Optional.empty();
        }
        Sawing best = ways.getFirst();
        if (ways.size() == 1 || moreThan(ways.get(1), best) < LEAST_PERCENT) {
            return Optional.of(Sentence.of("sheets.saw", named(best)));
        }
        Sawing next = ways.get(1);
        String more = Long.toString(Math.round(moreThan(next, best)));
        return Optional.of(ladder.flatMap(
                        learned -> KeptForLater.reason(learned, new Remainder(List.of(sawn)), Optional.empty())
                                .map(why -> Sentence.of("sheets.saw.asked", named(best), named(next), more, why)))
                .orElseGet(() -> Sentence.of("sheets.saw.worth", named(best), named(next), more)));
    }

    /** By how many per cent the better one is worth more. */
    private static double moreThan(Sawing other, Sawing better) {
        double least = Math.max(1, other.value().mm2());
        return HUNDRED * (better.value().mm2() - other.value().mm2()) / least;
    }

    private static Object named(Sawing way) {
        return way.pieces().stream()
                .map(LargestRectangle::size)
                .map(HowToSaw::whole)
                .map(Object.class::cast)
                .reduce((one, more) -> Sentence.of("sheets.saw.and", one, more))
                .orElseThrow();
    }

    /** Longer side first, as sizes of pieces are told. */
    private static Size whole(Size size) {
        return new Size(size.longerSide(), size.shorterSide());
    }
}
