package puzzleworkshop.sheets;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** A port: the orders that still need a sheet. Implemented by the room that knows orders. */
public interface WaitingBlanks {

    /** Confirmed and quoted orders without a reserved sheet, in the order they came. */
    List<WaitingBlank> waiting();

    /** The number by which people know an order. */
    Optional<String> numberOf(long orderId);

    /**
     * One of them.
     *
     * @param number the order's number for people
     * @param title what it is, for people: customer and size
     */
    record WaitingBlank(long orderId, String number, String title, BlankWish wish, Optional<LocalDate> due) {}
}
