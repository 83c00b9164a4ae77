package puzzleworkshop.cutting.settings;

import puzzleworkshop.measure.Length;
import puzzleworkshop.sheets.board.BoardFacts;

/**
 * What a setting depends on in the wood: two boards of one kind are cut alike.
 *
 * @param material id of a {@link puzzleworkshop.sheets.board.Material}
 * @param grade name of a {@link puzzleworkshop.sheets.board.Grade}: construction ply needs more than craft ply
 * @param thickness nominal
 */
public record BoardKind(String material, String grade, Length thickness) {

    public BoardKind {
        if (material == null || material.isBlank() || grade == null || grade.isBlank()) {
            throw new IllegalArgumentException("A kind of board has a material and a grade");
        }
        if (!thickness.isPositive() || thickness.mm() > 100) {
            throw new IllegalArgumentException("A board is above 0 and at most 100 mm thick, not " + thickness.mm());
        }
    }

    /** The kind that a board of the rack is of, by its nominal thickness. */
    public static BoardKind of(BoardFacts facts) {
        return new BoardKind(facts.material(), facts.grade().name(), facts.nominal());
    }
}
