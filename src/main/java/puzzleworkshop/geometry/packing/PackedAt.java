package puzzleworkshop.geometry.packing;

/**
 * Where one piece lies: its corner nearest to the sheet's origin.
 *
 * @param piece place of the piece in the list that was packed, from 0
 * @param sheet which sheet, from 0 (always 0 on a roll)
 * @param x millimetres along the sheet's width
 * @param y millimetres along the sheet's height, or along the roll
 * @param turned whether its width and height have changed places
 */
public record PackedAt(int piece, int sheet, double x, double y, boolean turned) {}
