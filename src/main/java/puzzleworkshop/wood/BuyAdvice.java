package puzzleworkshop.wood;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.wood.asked.BoardKindAsked;

/**
 * What boards of a kind to order now.
 *
 * @param lines for each board that can be bought
 * @param possible false: no order of a few boards of each reaches the service level
 * @param tooLarge so many sizes asked for fit on none of these boards; the advice leaves them out
 * @param waiting blanks of confirmed orders that wait for a board
 * @param onTheWay boards that were ordered and count as if they came on their day
 * @param cost of all
 * @param service share of the drawn courses in which no blank stands without a board, with the order
 * @param without the same when nothing is ordered
 * @param orderBy the day by which boards must be ordered, today when at once; empty: the rack does for three months
 */
public record BuyAdvice(
        BoardKindAsked kind,
        String material,
        List<Line> lines,
        boolean possible,
        int tooLarge,
        int waiting,
        int onTheWay,
        Money cost,
        Percent service,
        Percent without,
        Optional<LocalDate> orderBy) {

    /**
     * @param cutTo the size that the dealer cuts it to; empty: the whole board
     * @param price of one
     * @param weeks until it is there
     * @param count how many to order; 0: none
     * @param breakEven the price at which the order with this board costs as much as without it
     */
    public record Line(
            BoardOffer board, Optional<Size> cutTo, Money price, int weeks, int count, Optional<Money> breakEven) {}

    public BuyAdvice {
        lines = List.copyOf(lines);
    }

    public boolean isDue() {
        return lines.stream().anyMatch(line -> line.count() > 0);
    }
}
