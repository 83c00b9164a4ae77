package puzzleworkshop.boards;

import java.time.LocalDate;
import java.util.Optional;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.sheets.board.BlankWish;

/**
 * A blank of a confirmed order that has no sheet yet.
 *
 * @param position of the blank within its order, from 1
 * @param title what it is, for people: the customer
 */
public record WaitingBlank(OrderRef order, int position, String title, BlankWish wish, Optional<LocalDate> due) {}
