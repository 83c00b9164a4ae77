package puzzleworkshop.planning;

import java.time.LocalDate;
import java.util.Optional;
import puzzleworkshop.orders.Order;
import puzzleworkshop.planning.schedule.Job.Wait;

/** How the house words what it tells a customer, and where that is kept; the room of letters knows. */
public interface NoticeWording {

    record Words(String subject, String body) {}

    /**
     * @param waitsFor what the order waits for
     * @param instead another day to be promised; empty when the promised one stands
     */
    Words words(Order order, Optional<Wait.For> waitsFor, Optional<LocalDate> instead);

    /** Keeps what was told, in the caller's transaction. */
    void told(Order order, Optional<Wait.For> waitsFor, Optional<LocalDate> instead, Words words);
}
