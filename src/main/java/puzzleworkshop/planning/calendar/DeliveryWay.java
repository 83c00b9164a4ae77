package puzzleworkshop.planning.calendar;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.Set;

/**
 * A way by which an order reaches its customer.
 *
 * @param id of the way; 0 for one not kept
 * @param name as people call it, 'parcel post', 'collection'
 * @param leavesOn weekdays on which things are handed over
 * @param cutOff what is handed over later on such a day leaves with the next one
 * @param daysOnTheWay delivery days until it arrives, counted with the longer of what the carrier says; 0 arrives the same day
 * @param arrivesOn weekdays that count as delivery days
 */
public record DeliveryWay(
        long id, String name, Set<DayOfWeek> leavesOn, LocalTime cutOff, int daysOnTheWay, Set<DayOfWeek> arrivesOn) {

    public DeliveryWay {
        leavesOn = Set.copyOf(leavesOn);
        arrivesOn = Set.copyOf(arrivesOn);
        if (leavesOn.isEmpty() || arrivesOn.isEmpty() || daysOnTheWay < 0) {
            throw new IllegalArgumentException(
                    "A way of delivery needs days on which it leaves and days on which it arrives");
        }
    }

    /** The hand-over for something that is ready at the moment, free days left out: the day at its cut-off time. */
    public LocalDateTime leaves(LocalDateTime ready, FreeDays free) {
        LocalDate day = ready.toLocalDate();
        while (!leavesOn.contains(day.getDayOfWeek())
                || free.closed().contains(day)
                || ready.isAfter(day.atTime(cutOff))) {
            day = day.plusDays(1);
        }
        return day.atTime(cutOff);
    }

    /** The day on which something handed over on the given day arrives. */
    public LocalDate arrives(LocalDate handedOver, FreeDays free) {
        LocalDate day = handedOver;
        for (int left = daysOnTheWay; left > 0; ) {
            day = day.plusDays(1);
            if (delivers(day, free)) {
                left--;
            }
        }
        return day;
    }

    /** Whether it counts as a day on the way. */
    boolean delivers(LocalDate day, FreeDays free) {
        return arrivesOn.contains(day.getDayOfWeek()) && !free.undelivered().contains(day);
    }

    /** The last hand-over with which it still arrives by the given day. */
    public LocalDateTime latestHandOver(LocalDate arriveBy, FreeDays free) {
        LocalDate day = arriveBy;
        while (!leavesOn.contains(day.getDayOfWeek())
                || free.closed().contains(day)
                || arrives(day, free).isAfter(arriveBy)) {
            day = day.minusDays(1);
        }
        return day.atTime(cutOff);
    }
}
