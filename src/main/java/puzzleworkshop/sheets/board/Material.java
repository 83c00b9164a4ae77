package puzzleworkshop.sheets.board;

import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Length;

/**
 * A kind of board.
 *
 * @param id short, for files: {@code birch-ply}
 * @param name as people say it
 * @param densityKgM3 at 12 % moisture
 */
public record Material(String id, String name, double densityKgM3) {

    /** Mass in grams of a flat piece. */
    public double grams(Area area, Length thickness) {
        return area.toSquareMetres() * thickness.mm() / 1000 * densityKgM3 * 1000;
    }
}
