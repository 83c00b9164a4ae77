package puzzleworkshop.wood;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.sheets.board.BoardOffer;

/**
 * What boards of a kind to order now.
 *
 * @param lines for each board that can be bought
 * @param possible false: no order of a few boards of each reaches the service level
 * @param tooLarge so many sizes asked for fit on none of these boards; the advice leaves them out
 * @param cost of all
 * @param service share of the drawn courses in which no blank stands without a board, with the order
 * @param without the same when nothing is ordered
 */
public record BuyAdvice(
        BoardKindAsked kind,
        String material,
        List<Line> lines,
        boolean possible,
        int tooLarge,
        Money cost,
        Percent service,
        Percent without) {

    /**
     * @param count how many to order; 0: none
     * @param breakEven the price at which the order with this board costs as much as without it
     */
    public record Line(BoardOffer board, int count, Optional<Money> breakEven) {}

    public BuyAdvice {
        lines = List.copyOf(lines);
    }

    public boolean isDue() {
        return lines.stream().anyMatch(line -> line.count() > 0);
    }
}
