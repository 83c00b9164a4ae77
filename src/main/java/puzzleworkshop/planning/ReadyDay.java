package puzzleworkshop.planning;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.measure.Sentence;

/**
 * When new work can be with the customer.
 *
 * @param ready the first day on which the customer can have it while every given promise is kept, buffer included
 * @param rush the first day if it goes before work that can wait; empty when that gains nothing
 * @param cause what the day hangs on, such as the laser being full until Friday
 * @param journey when it leaves and how long it is on its way, with the reason
 * @param sooner earlier days, in their order, that are possible only at the cost of others
 */
public record ReadyDay(
        LocalDate ready, Optional<LocalDate> rush, Sentence cause, Sentence journey, List<Sooner> sooner) {

    public ReadyDay {
        sooner = List.copyOf(sooner);
    }

    /** A day before the first one, and whose promises it would break or stretch. */
    public record Sooner(LocalDate day, List<Harm> harmed) {

        public Sooner {
            harmed = List.copyOf(harmed);
        }
    }

    /**
     * @param order number of the order that would be late, or later
     * @param customer whose it is
     * @param daysLate by how much in all; 0 for some hours
     * @param lateBefore whether it is late already, without the new work
     */
    public record Harm(String order, String customer, long daysLate, boolean lateBefore) {}

    /** Those who would pay for a promise by that day; empty when nobody, or when no sequence of the work keeps it. */
    public List<Harm> harmedBy(LocalDate promised) {
        return by(promised).map(Sooner::harmed).orElse(List.of());
    }

    /** Whether the work can reach its customer by that day at all, others put off. */
    public boolean isPossible(LocalDate promised) {
        return !promised.isBefore(ready) || by(promised).isPresent();
    }

    private Optional<Sooner> by(LocalDate promised) {
        return promised.isBefore(ready)
                ? sooner.stream()
                        .filter(sooner -> !sooner.day().isAfter(promised))
                        .reduce((earlier, later) -> later)
                : Optional.empty();
    }
}
