package puzzleworkshop.planning.calendar;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.support.MetricHouse;

/** Expected days are counted by hand on a calendar of December 2026, whose first is a Tuesday. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class JourneyTest {

    /** Leaves Monday to Friday until four, takes two days, Sundays are none. */
    private static final DeliveryWay PARCEL = new DeliveryWay(
            1,
            "parcel",
            EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY),
            LocalTime.of(16, 0),
            2,
            EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.SATURDAY));

    private final Formatter figures = MetricHouse.figures();

    @Test
    void before_the_cut_off_it_leaves_the_same_day() {
        says(
                december(1, 15),
                FreeDays.NONE,
                december(3),
                "Goes out Tue 1 Dec, not later than 16:00; 2 delivery days on the way.");
    }

    @Test
    void after_the_cut_off_it_leaves_the_next_day_and_the_hour_is_named() {
        says(
                december(1, 17),
                FreeDays.NONE,
                december(4),
                "Goes out Wed 2 Dec: after 16:00 nothing leaves on Tue 1 Dec; 2 delivery days on the way.");
    }

    @Test
    void over_a_weekend_the_sunday_is_no_delivery_day() {
        says(
                december(5, 10),
                FreeDays.NONE,
                december(9),
                "Goes out Mon 7 Dec: nothing leaves before; 2 delivery days on the way.");
        says(
                december(4, 10),
                FreeDays.NONE,
                december(7),
                "Goes out Fri 4 Dec, not later than 16:00; 2 delivery days on the way (Sun 6 Dec is none).");
    }

    @Test
    void a_public_holiday_is_named_where_it_puts_off_leaving_or_arriving() {
        FreeDays christmas = FreeDays.holidays(Set.of(december(25), december(26), december(28)));
        says(
                december(24, 17),
                christmas,
                december(31),
                "Goes out Tue 29 Dec: after 16:00 nothing leaves on Thu 24 Dec, and Fri 25 Dec to Mon 28 Dec are"
                        + " free days; 2 delivery days on the way.");
        says(
                december(24, 10),
                christmas,
                december(30),
                "Goes out Thu 24 Dec, not later than 16:00; 2 delivery days on the way (4 days until then are none).");
        says(
                december(25, 10),
                FreeDays.holidays(Set.of(december(25))),
                december(30),
                "Goes out Mon 28 Dec: Fri 25 Dec is a free day; 2 delivery days on the way.");
    }

    @Test
    void what_leaves_before_the_workshop_closes_arrives_while_it_is_closed() {
        Set<LocalDate> closed = december(23).datesUntil(december(31)).collect(Collectors.toSet());
        FreeDays free = new FreeDays(closed, Set.of(december(25), december(26)));
        says(
                december(22, 10),
                free,
                december(24),
                "Goes out Tue 22 Dec, not later than 16:00; 2 delivery days on the way.");
        assertThat(PARCEL.latestHandOver(december(30), free).toLocalDate()).isEqualTo(december(22));
        assertThat(Journey.of(PARCEL, december(23, 10), free).leaves().toLocalDate())
                .isEqualTo(december(31));
    }

    private void says(LocalDateTime ready, FreeDays free, LocalDate arrives, String words) {
        Journey journey = Journey.of(PARCEL, ready, free);
        assertThat(journey.arrives()).isEqualTo(arrives);
        assertThat(figures.say(journey.why())).isEqualTo(words);
    }

    private static LocalDate december(int day) {
        return LocalDate.of(2026, 12, day);
    }

    private static LocalDateTime december(int day, int hour) {
        return december(day).atTime(hour, 0);
    }
}
