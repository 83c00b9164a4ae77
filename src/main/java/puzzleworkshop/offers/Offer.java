package puzzleworkshop.offers;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.artwork.Resolution;
import puzzleworkshop.boards.BlankPlan;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.time.TimeRange;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.judged.Difficulty;
import puzzleworkshop.pattern.smallparts.SmallPartsVerdict;
import puzzleworkshop.planning.ReadyDay;
import puzzleworkshop.pricing.KeptPrice;
import puzzleworkshop.sheets.find.Suggestion;

/**
 * What was worked out for a wish. A part that could not be worked out is absent, and the complaints say why, each under
 * the question it belongs to; the other parts are there all the same.
 *
 * @param boards where the puzzles are cut from
 * @param otherSheets sheets that would do for one puzzle, the best first
 * @param laser time of the laser for one puzzle
 * @param hard how hard it is with its picture
 * @param complaints what is wrong, where; while there are any the wish cannot be quoted
 */
public record Offer(
        Wish wish,
        Optional<Resolution> resolution,
        Optional<CutPattern> pattern,
        Optional<SmallPartsVerdict> smallParts,
        Optional<BlankPlan> boards,
        List<Suggestion> otherSheets,
        Optional<CutSetting> setting,
        Optional<TimeRange> laser,
        Optional<KeptPrice> price,
        Optional<ReadyDay> ready,
        Optional<HowHard> hard,
        Map<Question, Sentence> complaints) {

    /**
     * @param alikeness of neighbouring pieces in the picture, 0 to 1
     */
    public record HowHard(Difficulty difficulty, double alikeness) {}

    /** The questions of the New order page; a complaint stands beside its question. */
    public enum Question {
        PICTURE,
        SIZE,
        PIECES,
        AGE,
        BOARD,
        PRICE,
        WANTED_BY,
        READY
    }

    public Offer {
        otherSheets = List.copyOf(otherSheets);
        complaints = Map.copyOf(complaints);
    }

    public boolean canBeQuoted() {
        return complaints.isEmpty() && price.isPresent();
    }

    /** The laser's time for all puzzles together. */
    public Minutes laserForAll() {
        return laser.map(time -> time.likely().times(wish.quantity())).orElse(Minutes.ZERO);
    }
}
