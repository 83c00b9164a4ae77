package puzzleworkshop.sheets;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.geometry.Placement;

/** A port: the orders that still need a sheet. Implemented by the room that knows orders. */
public interface WaitingBlanks {

    /** Blanks of confirmed orders without a held sheet, in the order they came. */
    List<WaitingBlank> waiting();

    /**
     * Holds a sheet for the blank and keeps it with the order.
     *
     * @throws SheetTaken when somebody was quicker
     */
    void hold(WaitingBlank blank, SheetId sheet, Placement place, String who);

    /** The number by which people know an order. */
    Optional<String> numberOf(long orderId);

    /**
     * One of them.
     *
     * @param position of the blank within its order, from 1
     * @param number the order's number for people
     * @param title what it is, for people: customer and size
     */
    record WaitingBlank(
            long orderId, int position, String number, String title, BlankWish wish, Optional<LocalDate> due) {}
}
