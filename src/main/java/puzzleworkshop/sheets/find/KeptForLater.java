package puzzleworkshop.sheets.find;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.LargestRectangle;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.geometry.fit.Sawing;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;

/** Says what a remainder keeps of what the next weeks will ask for, and what the next best sheet would keep. */
final class KeptForLater {

    /** So many blanks must be expected before a size is worth a word. */
    private static final double SPOKEN_OF = 0.5;

    private record Kept(boolean worth, Sentence why) {}

    /** Pieces of one useful size. */
    private record Gives(int pieces, Size size, double expected) {}

    private KeptForLater() {}

    /** Empty when it keeps nothing that is expected. */
    static Optional<Sentence> reason(RemainderWorth.Ladder ladder, Remainder rest, Optional<Remainder> next) {
        return gives(ladder, rest).map(own -> {
            String expected = Long.toString(Math.round(own.expected()));
            if (next.isEmpty()) {
                return Sentence.of("sheets.reason.keeps", own.pieces(), own.size(), expected, ladder.weeks());
            }
            return gives(ladder, next.get())
                    .map(other -> Sentence.of(
                            "sheets.reason.keeps.other",
                            own.pieces(),
                            own.size(),
                            expected,
                            ladder.weeks(),
                            other.pieces(),
                            other.size()))
                    .orElseGet(() -> Sentence.of(
                            "sheets.reason.keeps.none", own.pieces(), own.size(), expected, ladder.weeks()));
        });
    }

    /** A full rack keeps only what the next weeks are expected to use. */
    static Keeping keeping(Optional<RemainderWorth.Ladder> ladder, Remainder.Part left, UsefulSizes sizes) {
        List<Sawing> ways = HowToSaw.ways(left, sizes);
        Remainder.Part part = HowToSaw.part(left, ways);
        Kept kept = kept(ladder, part);
        return new Keeping(part, kept.worth(), kept.why(), HowToSaw.reason(ways, part, ladder));
    }

    private static Kept kept(Optional<RemainderWorth.Ladder> ladder, Remainder.Part part) {
        if (part.isScrap()) {
            return new Kept(false, Sentence.of("sheets.keep.scrap"));
        }
        Size largest = part.useful().getFirst().size();
        return ladder.map(learned -> {
                    Optional<Sentence> expected = reason(learned, new Remainder(List.of(part)), Optional.empty());
                    if (learned.needed().get(part.rung())) {
                        return new Kept(true, expected.orElseGet(() -> Sentence.of("sheets.keep.useful", largest)));
                    }
                    String key = learned.full() ? "sheets.keep.enough" : "sheets.keep.room";
                    return new Kept(!learned.full(), Sentence.of(key, largest, learned.weeks()));
                })
                .orElseGet(() -> new Kept(true, Sentence.of("sheets.keep.useful", largest)));
    }

    /** The largest expected size that the remainder still gives, and how often. */
    private static Optional<Gives> gives(RemainderWorth.Ladder ladder, Remainder rest) {
        UsefulSizes sizes = ladder.sizes();
        for (int rung = sizes.top(); rung > UsefulSizes.SCRAP; rung--) {
            Size wanted = sizes.rung(rung);
            if (ladder.expected().get(rung) < SPOKEN_OF) {
                continue;
            }
            int pieces = (int) rest.parts().stream()
                    .flatMap(part -> part.useful().stream())
                    .map(LargestRectangle::size)
                    .filter(piece -> wanted.longerSide().compareTo(piece.longerSide()) <= 0
                            && wanted.shorterSide().compareTo(piece.shorterSide()) <= 0)
                    .count();
            if (pieces > 0) {
                return Optional.of(new Gives(pieces, wanted, ladder.expected().get(rung)));
            }
        }
        return Optional.empty();
    }
}
