package puzzleworkshop.wood.asked;

import puzzleworkshop.measure.Length;

/** A kind of board that blanks are cut from; the grade by its name. */
public record BoardKindAsked(String material, String grade, Length thickness) {}
