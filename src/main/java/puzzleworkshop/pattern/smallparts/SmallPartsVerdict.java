package puzzleworkshop.pattern.smallparts;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.pattern.IntendedAge;

/**
 * What was computed about small parts and what follows from it. A computation of ours, not a test by a laboratory: the
 * notes say so and defer to the rules in force.
 *
 * @param age for whom the puzzle is meant
 * @param pieces number of all pieces
 * @param smallPieces numbers of the pieces that fit into the cylinder, undecided ones included
 * @param undecided how many of them could not be decided and count as fitting
 * @param saleable false where small parts are forbidden for the age
 * @param headline the result in one sentence
 * @param boxText the warning the box needs, if any
 * @param notes what else to know, always with the one that says what was computed
 */
public record SmallPartsVerdict(
        IntendedAge age,
        int pieces,
        List<Integer> smallPieces,
        int undecided,
        boolean saleable,
        Sentence headline,
        Optional<Sentence> boxText,
        List<Sentence> notes) {

    public SmallPartsVerdict {
        smallPieces = List.copyOf(smallPieces);
        notes = List.copyOf(notes);
    }

    public boolean hasSmallParts() {
        return !smallPieces.isEmpty();
    }
}
