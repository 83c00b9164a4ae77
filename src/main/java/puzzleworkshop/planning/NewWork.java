package puzzleworkshop.planning;

import java.util.Optional;
import puzzleworkshop.measure.Minutes;

/**
 * Work that is asked about and not yet taken on.
 *
 * @param quantity puzzles
 * @param piecesEach pieces of one of them
 * @param laser time of the laser for all puzzles together
 * @param sameSettings names the board and its setting, so that work with the same may share a set-up
 * @param way by which it is delivered; absent: the usual one
 */
public record NewWork(int quantity, int piecesEach, Minutes laser, String sameSettings, Optional<Long> way) {}
