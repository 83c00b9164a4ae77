package puzzleworkshop.planning.calendar;

import java.time.LocalDate;
import java.util.Set;

/**
 * Days on which the workshop is closed, and those of them on which nothing is delivered either: a public holiday is both,
 * while a parcel sent before the workshop's own holidays arrives during them.
 *
 * @param closed on which nobody works and nothing leaves
 * @param undelivered on which no carrier delivers; they count as closed too
 */
public record FreeDays(Set<LocalDate> closed, Set<LocalDate> undelivered) {

    public static final FreeDays NONE = new FreeDays(Set.of(), Set.of());

    public FreeDays {
        closed = Set.copyOf(closed);
        undelivered = Set.copyOf(undelivered);
    }

    /** Days on which neither the workshop nor a carrier works. */
    public static FreeDays holidays(Set<LocalDate> days) {
        return new FreeDays(days, days);
    }
}
