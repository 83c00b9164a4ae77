package puzzleworkshop.planning.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static puzzleworkshop.planning.schedule.WorkshopWeeks.MONDAY;

import java.time.DayOfWeek;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.planning.calendar.FreeDays;
import puzzleworkshop.planning.calendar.OpenHours;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.calendar.WorkingCalendar.Evening;
import puzzleworkshop.workshop.Stage;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OverloadAdviceTest {

    private final WorkingCalendar calendar = WorkshopWeeks.twoPeople();
    private final Scheduler scheduler = Scheduler.usual();

    /** A demo week: twelve cuts that cannot all be done, on a laser that runs while the maker is there, 9 to 12. */
    @Test
    void an_overloaded_laser_says_whom_to_warn_and_which_evening_helps() {
        List<Job> jobs = WorkshopWeeks.overloadedLaser();
        Schedule plan = scheduler.plan(calendar, jobs, MONDAY);
        OverloadAdvice relief =
                OverloadAdvice.of(scheduler, calendar, jobs, MONDAY, plan).orElseThrow();
        assertThat(relief.narrow()).isEqualTo(Stage.Resource.LASER);
        assertThat(relief.neededMinutes()).isGreaterThan(relief.availableMinutes());
        assertThat(relief.warn()).hasSize(plan.late()).allMatch(Schedule.Outlook::isLate);
        assertThat(relief.fewestLate()).isPositive().isLessThanOrEqualTo(plan.late());
        assertThat(relief.evenings()).isNotEmpty();
        OverloadAdvice.Longer best = relief.evenings().getFirst();
        assertThat(best.lateAfter()).isLessThan(plan.late());
        WorkingCalendar longer = calendar;
        for (Evening evening : best.evenings()) {
            longer = longer.with(evening);
        }
        assertThat(scheduler.plan(longer, jobs, MONDAY).late()).isLessThanOrEqualTo(best.lateAfter());
    }

    @Test
    void the_days_of_an_overloaded_week_ask_for_more_than_the_laser_has() {
        Schedule plan = scheduler.plan(calendar, WorkshopWeeks.overloadedLaser(), MONDAY);
        int needed = 0;
        int capacity = 0;
        for (int d = 0; d < 4; d++) {
            Load load = plan.load(MONDAY.toLocalDate().plusDays(d), Stage.Resource.LASER);
            assertThat(load.planned()).isLessThanOrEqualTo(load.capacity());
            assertThat(load.capacity()).isEqualTo(180);
            needed += load.needed();
            capacity += load.capacity();
        }
        assertThat(needed).isGreaterThan(capacity);
        assertThat(plan.load(MONDAY.toLocalDate(), Stage.Resource.HANDS).capacity())
                .isEqualTo(480 + 240);
    }

    @Test
    void a_quiet_week_needs_no_relief() {
        List<Job> jobs = WorkshopWeeks.random(3, 4).stream()
                .map(job -> job.dueBy(MONDAY.plusDays(11)))
                .toList();
        assertThat(OverloadAdvice.of(scheduler, calendar, jobs, MONDAY, scheduler.plan(calendar, jobs, MONDAY)))
                .isEmpty();
    }

    @Test
    void a_holiday_closes_everything_but_an_evening_agreed_on() {
        var day = MONDAY.toLocalDate();
        WorkingCalendar closed = new WorkingCalendar(
                calendar.people(), calendar.laser(), calendar.printer(), FreeDays.holidays(Set.of(day)), List.of());
        assertThat(closed.capacity(Stage.Resource.HANDS, day)).isZero();
        assertThat(closed.isWorkingDay(day)).isFalse();
        WorkingCalendar evening = closed.with(new Evening("Mila", day, new OpenHours.Span(1080, 1200)));
        assertThat(evening.capacity(Stage.Resource.LASER, day)).isEqualTo(120);
        WorkingCalendar byTheHelper = closed.with(new Evening("Jo", day, new OpenHours.Span(1080, 1200)));
        assertThat(byTheHelper.capacity(Stage.Resource.LASER, day)).isZero();
        assertThat(byTheHelper.capacity(Stage.Resource.HANDS, day)).isEqualTo(120);
    }

    @Test
    void hours_are_read_as_people_write_them() {
        assertThat(OpenHours.read(" 8:00-12:00, 13.00–17:30 ")).hasToString("[08:00–12:00, 13:00–17:30]");
        assertThat(OpenHours.read("")).isEmpty();
        assertThat(OpenHours.weekdays(new OpenHours.Span(480, 720)).written(DayOfWeek.SATURDAY))
                .isEmpty();
        for (String wrong :
                List.of("8-12", "12:00-8:00", "8:00-12:00, 11:00-13:00", "8:70-9:00", "20:00-25:00", "soon")) {
            assertThat(org.assertj.core.api.Assertions.catchThrowable(() -> OpenHours.read(wrong)))
                    .as(wrong)
                    .isInstanceOf(Refused.class);
        }
    }
}
