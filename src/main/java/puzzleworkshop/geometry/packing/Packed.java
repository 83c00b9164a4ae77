package puzzleworkshop.geometry.packing;

import java.util.List;

/**
 * A layout of all pieces and what is known about the best one.
 *
 * @param spots one for each piece, in the order of the pieces
 * @param sheets how many sheets are used; 1 on a roll
 * @param length how far the pieces reach along the roll, or on the last sheet, millimetres
 * @param fewestSheets no layout of these pieces (with these pins) uses fewer sheets
 * @param leastLength on a roll: no layout is shorter, millimetres; on sheets 0
 */
public record Packed(List<PackedAt> spots, int sheets, double length, int fewestSheets, double leastLength) {

    public Packed {
        spots = List.copyOf(spots);
    }

    /** Whether no layout can be better: fewer sheets, or a shorter piece of roll (to a thousandth of a millimetre). */
    public boolean provenBest() {
        return leastLength > 0 ? length <= leastLength + 1e-3 : sheets <= fewestSheets;
    }
}
