package puzzleworkshop.demo;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;

/** The hours in which the demo workshop worked in its past year: nobody masks a board at three in the morning. */
final class BenchTime {

    private static final LocalTime OPENS = LocalTime.of(8, 30);
    private static final LocalTime CLOSES = LocalTime.of(16, 30);

    private BenchTime() {}

    static boolean isFree(LocalDate day) {
        return day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY;
    }

    static LocalDate orAfter(LocalDate day) {
        return isFree(day) ? orAfter(day.plusDays(1)) : day;
    }

    static LocalDate orBefore(LocalDate day) {
        return isFree(day) ? orBefore(day.minusDays(1)) : day;
    }

    /** How long the bench is open from one moment to another. */
    static Duration between(Instant from, Instant until, ZoneId zone) {
        Duration open = Duration.ZERO;
        LocalDate last = until.atZone(zone).toLocalDate();
        for (LocalDate day = from.atZone(zone).toLocalDate(); !day.isAfter(last); day = day.plusDays(1)) {
            if (!isFree(day)) {
                Instant begins = later(from, day.atTime(OPENS).atZone(zone).toInstant());
                Instant ends = earlier(until, day.atTime(CLOSES).atZone(zone).toInstant());
                open = begins.isBefore(ends) ? open.plus(Duration.between(begins, ends)) : open;
            }
        }
        return open;
    }

    /** The moment at which the bench has been open for so long since another. */
    static Instant after(Instant from, Duration open, ZoneId zone) {
        ZonedDateTime at = from.atZone(zone);
        Duration left = open;
        for (LocalDate day = at.toLocalDate(); ; day = day.plusDays(1)) {
            if (isFree(day)) {
                continue;
            }
            Instant begins = later(from, day.atTime(OPENS).atZone(zone).toInstant());
            Instant ends = day.atTime(CLOSES).atZone(zone).toInstant();
            Duration today = begins.isBefore(ends) ? Duration.between(begins, ends) : Duration.ZERO;
            if (left.compareTo(today) <= 0) {
                return begins.plus(left);
            }
            left = left.minus(today);
        }
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }

    private static Instant earlier(Instant one, Instant other) {
        return one.isBefore(other) ? one : other;
    }
}
