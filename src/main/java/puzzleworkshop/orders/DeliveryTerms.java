package puzzleworkshop.orders;

import java.time.LocalDate;
import java.util.Optional;

/**
 * When and how an order is to reach its customer.
 *
 * @param wantedBy what the customer hopes for
 * @param promised what was said; absent only on a quote whose date cannot be kept
 * @param way by which it is delivered, as the planning room knows it; absent: the usual one
 */
public record DeliveryTerms(
        Optional<LocalDate> wantedBy, Optional<LocalDate> promised, boolean rush, Optional<Long> way) {}
