package puzzleworkshop.pricing.cost;

import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;

/**
 * What one stage takes of hands, and how often it fails.
 *
 * @param stage at the bench
 * @param setUp hands once per order
 * @param perPuzzle hands for each puzzle
 * @param rejects share of puzzles that fail here, 0 up to but not including 100 %
 */
public record StageWork(Stage stage, Minutes setUp, Minutes perPuzzle, Percent rejects) {

    public StageWork {
        if (rejects.isNegative() || rejects.compareTo(Percent.of(100)) >= 0) {
            throw new IllegalArgumentException("Rejects must be from 0 to below 100 %, not " + rejects.hundredths());
        }
    }

    /** From the workshop's standard, for puzzles of so many pieces. */
    public static StageWork of(StageStandard standard, int pieces) {
        return new StageWork(
                standard.stage(),
                standard.setUp(),
                standard.perPuzzle().plus(standard.perPiece().times(pieces)),
                standard.rejects());
    }

    /** Hands for a whole order. */
    public Minutes forQuantity(int quantity) {
        return setUp.plus(perPuzzle.times(quantity));
    }
}
