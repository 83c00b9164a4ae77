package puzzleworkshop.cutting;

import puzzleworkshop.measure.Length;

/**
 * What a setting depends on in the wood: two boards of one kind are cut alike.
 *
 * @param material code of the material, as the sheets room names it (BIRCH…)
 * @param grade code of the grade: construction ply needs more than craft ply
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
}
