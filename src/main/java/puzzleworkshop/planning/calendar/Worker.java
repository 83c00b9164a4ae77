package puzzleworkshop.planning.calendar;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Set;
import puzzleworkshop.workshop.Stage;

/**
 * Someone whose hands do the work.
 *
 * @param name as on screens
 * @param hours in an ordinary week
 * @param daysOff of this person, besides the workshop's holidays
 * @param does the stages given to this person; a helper packs but may not run the laser
 */
public record Worker(String name, OpenHours hours, Set<LocalDate> daysOff, Set<Stage> does) {

    public Worker {
        daysOff = Set.copyOf(daysOff);
        does = Set.copyOf(does);
    }

    /** Someone who does everything. */
    public static Worker of(String name, OpenHours hours) {
        return new Worker(name, hours, Set.of(), EnumSet.allOf(Stage.class));
    }
}
