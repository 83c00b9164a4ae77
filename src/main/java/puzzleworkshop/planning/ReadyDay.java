package puzzleworkshop.planning;

import java.time.LocalDate;
import java.util.Optional;
import puzzleworkshop.measure.Sentence;

/**
 * When new work can be with the customer.
 *
 * @param ready the first day on which the customer can have it while every given promise is kept, buffer included
 * @param rush the first day if it goes before work that can wait; empty when that gains nothing
 * @param cause what the day hangs on, such as the laser being full until Friday
 */
public record ReadyDay(LocalDate ready, Optional<LocalDate> rush, Sentence cause) {}
