package puzzleworkshop.sheets;

import puzzleworkshop.measure.Length;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.Material;

/**
 * A kind of board of which there is something in the rack.
 *
 * @param material id of a {@link Material}
 * @param nominal thickness
 * @param sheets how many lie there, free or held
 */
public record StockedKind(String material, Grade grade, Length nominal, int sheets) {}
