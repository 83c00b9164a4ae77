package puzzleworkshop.insights.work;

import java.time.LocalDate;

/** Days from the first to the last, both included. */
public record Period(LocalDate from, LocalDate to) {

    public Period {
        if (to.isBefore(from)) {
            throw new IllegalArgumentException(from + " to " + to);
        }
    }

    /** The twelve months that end with the month of a day. */
    public static Period yearUntil(LocalDate today) {
        return new Period(today.withDayOfMonth(1).minusMonths(11), today);
    }

    public static Period year(int year, LocalDate today) {
        LocalDate last = LocalDate.of(year, 12, 31);
        return new Period(LocalDate.of(year, 1, 1), last.isAfter(today) ? today : last);
    }
}
