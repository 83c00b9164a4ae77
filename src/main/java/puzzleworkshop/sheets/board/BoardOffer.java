package puzzleworkshop.sheets.board;

import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;

/**
 * A new board that can be bought.
 *
 * @param name as ordered, such as 'birch ply 3 mm, 600 × 300'
 * @param offered false: kept for the record only
 */
public record BoardOffer(
        long id,
        String name,
        String material,
        Grade grade,
        Length thickness,
        Size size,
        Grain grain,
        Money price,
        boolean offered) {

    /** The same at another price. */
    public BoardOffer at(Money now) {
        return new BoardOffer(id, name, material, grade, thickness, size, grain, now, offered);
    }

    /** The same, no longer offered. */
    public BoardOffer withdrawn() {
        return new BoardOffer(id, name, material, grade, thickness, size, grain, price, false);
    }
}
