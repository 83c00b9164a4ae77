package puzzleworkshop.wood;

import java.time.LocalDate;
import java.util.Optional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.board.BoardOffer;

/**
 * Boards that were ordered and have not come yet.
 *
 * @param cutTo the size that the dealer cuts them to; empty: whole boards
 * @param count how many, 1 to 1,000
 * @param price of one
 * @param due day on which they should come
 */
public record OnTheWay(
        long id, BoardOffer board, Optional<Size> cutTo, int count, Money price, LocalDate ordered, LocalDate due) {

    /** Of one of them. */
    public Size size() {
        return cutTo.orElse(board.size());
    }
}
