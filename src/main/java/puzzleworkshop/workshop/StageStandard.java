package puzzleworkshop.workshop;

import java.time.Duration;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Percent;

/**
 * What one stage usually takes.
 *
 * @param setUp hands, once for an order however many puzzles it has
 * @param perPuzzle hands, for each puzzle
 * @param perPiece hands, for each piece of each puzzle
 * @param rest how long the work must lie before the next stage, without hands
 * @param rejects share that fails here and is made again
 */
public record StageStandard(
        Stage stage, Minutes setUp, Minutes perPuzzle, Minutes perPiece, Duration rest, Percent rejects) {

    /** Hands for an order of so many puzzles with so many pieces each; the laser's own time comes on top at CUT. */
    public Minutes hands(int puzzles, int piecesEach) {
        return setUp.plus(perPuzzle.times(puzzles)).plus(perPiece.times((double) puzzles * piecesEach));
    }
}
