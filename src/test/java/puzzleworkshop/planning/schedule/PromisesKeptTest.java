package puzzleworkshop.planning.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static puzzleworkshop.planning.schedule.WorkshopWeeks.MONDAY;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.planning.calendar.FreeDays;
import puzzleworkshop.planning.calendar.OpenHours;
import puzzleworkshop.planning.calendar.OpenHours.Span;
import puzzleworkshop.planning.calendar.Worker;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.schedule.Job.Wait;
import puzzleworkshop.workshop.Stage;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PromisesKeptTest {

    private final Scheduler scheduler = Scheduler.usual();

    static WorkingCalendar oneMaker() {
        OpenHours hours = OpenHours.weekdays(new Span(480, 720), new Span(780, 1020));
        return new WorkingCalendar(List.of(Worker.of("Mila", hours)), hours, hours, FreeDays.NONE, List.of());
    }

    /** The sequence 1, 2, 3, 8, 4, 5, 6, 7 has none late, found by trying all 40,320 with another program. */
    @Test
    void eight_orders_that_can_all_be_on_time_are_all_on_time() {
        LocalDateTime thursday = LocalDate.of(2026, 3, 26).atTime(8, 0);
        int[][] minutesAndDue = {
            {120, 3464}, {180, 5208}, {30, 3057}, {30, 1576}, {60, 2019}, {240, 4943}, {180, 3452}, {90, 1967}
        };
        List<Job> jobs = new ArrayList<>();
        for (int[] one : minutesAndDue) {
            jobs.add(Job.of(
                    jobs.size() + 1,
                    thursday.toLocalDate().atStartOfDay().plusMinutes(one[1]),
                    List.of(Task.byHand(Stage.STICK, 0, one[0], 0))));
        }
        assertThat(scheduler.plan(oneMaker(), jobs, thursday).late()).isZero();
    }

    /** An order at the laser, promised for tomorrow; then ten orders come without pictures, promised until month's end. */
    @Test
    void ten_orders_without_pictures_leave_an_order_at_the_laser_where_it_was() {
        List<Task> whole = WorkshopWeeks.whole(150, "birch 3");
        Job atTheLaser = Job.of(1, MONDAY.plusDays(1).withHour(16), whole.subList(5, 9));
        List<Job> before = new ArrayList<>(List.of(atTheLaser));
        for (int i = 0; i < 3; i++) {
            before.add(Job.of(2 + i, MONDAY.plusDays(2 + i).withHour(16), WorkshopWeeks.whole(120, "birch 3")));
        }
        List<Job> after = new ArrayList<>(before);
        for (int i = 0; i < 10; i++) {
            after.add(Job.of(100 + i, MONDAY.plusDays(10 + 2 * i).withHour(16), WorkshopWeeks.whole(240, "poplar 4"))
                    .waiting(new Wait(Wait.For.PICTURE, MONDAY.toLocalDate(), Stage.PRINT, MONDAY.plusDays(1))));
        }
        Schedule without = scheduler.plan(oneMaker(), before, MONDAY);
        Schedule with = scheduler.plan(oneMaker(), after, MONDAY);
        assertThat(with.of(1).isLate()).isFalse();
        for (Job job : before) {
            assertThat(with.of(job.id()).finish())
                    .as("order " + job.id())
                    .isEqualTo(without.of(job.id()).finish());
        }
    }

    /** Two weeks full to the minute, and one order too many: fewest late means that this one is never done. */
    @Test
    void no_order_is_put_off_without_limit_so_that_others_are_on_time() {
        List<Job> jobs = new ArrayList<>();
        jobs.add(halfDay(1, MONDAY.withHour(12)));
        for (int i = 0; i < 20; i++) {
            int day = i / 2 + i / 10 * 2;
            jobs.add(halfDay(2 + i, MONDAY.plusDays(day).withHour(i % 2 == 0 ? 12 : 17)));
        }
        Schedule plan = scheduler.plan(oneMaker(), jobs, MONDAY);
        long worst = plan.outlooks().values().stream()
                .mapToLong(Schedule.Outlook::lateDays)
                .max()
                .orElseThrow();
        assertThat(plan.late()).isPositive();
        assertThat(worst).isLessThan(7);
    }

    private static Job halfDay(long id, LocalDateTime due) {
        return Job.of(id, due, List.of(Task.byHand(Stage.STICK, 0, 240, 0)));
    }
}
