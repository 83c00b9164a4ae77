package puzzleworkshop.sheets.find;

import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.Sheet;

/**
 * A sheet that gives a blank, and how.
 *
 * @param placement where the blank lies on it
 * @param remainder what is left
 * @param valueLost what the rack loses by it, in mm² of best board, see {@link puzzleworkshop.geometry.UsefulSizes}
 * @param blankCost what the blank would carry in cost by the rule in force
 * @param reason why this one, in one sentence
 */
public record Suggestion(
        Sheet sheet,
        Size blank,
        Placement placement,
        Remainder remainder,
        Area valueLost,
        Money blankCost,
        Sentence reason) {

    Suggestion because(Sentence other) {
        return new Suggestion(sheet, blank, placement, remainder, valueLost, blankCost, other);
    }
}
