package puzzleworkshop.planning.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static puzzleworkshop.planning.schedule.WorkshopWeeks.MONDAY;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.FreeDays;
import puzzleworkshop.planning.calendar.OpenHours;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.schedule.PromiseDate.Forecast;
import puzzleworkshop.workshop.Stage;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PromiseDateTest {

    private final WorkingCalendar calendar = WorkshopWeeks.twoPeople();
    private final Scheduler scheduler = new Scheduler(100, 240, Batching.USUAL);

    /** Printed and laminated on Monday, rested, cut on Tuesday, half a day of buffer to Tuesday noon or later. */
    @Test
    void an_empty_workshop_promises_two_delivery_days_after_the_next_parcel() {
        Forecast forecast = new PromiseDate(calendar, List.of(), MONDAY, scheduler)
                .forecast(WorkshopWeeks.whole(20, "birch 3"), WorkshopWeeks.PARCEL)
                .orElseThrow();
        assertThat(forecast.ready()).isEqualTo(LocalDateTime.of(2026, 12, 1, 14, 49));
        assertThat(forecast.handOver()).isEqualTo(LocalDateTime.of(2026, 12, 1, 16, 0));
        assertThat(forecast.promised()).isEqualTo(LocalDate.of(2026, 12, 3));
        assertThat(forecast.rush()).isEmpty();
    }

    @Test
    void what_is_ready_after_the_cut_off_leaves_on_the_next_day_of_the_way() {
        DeliveryWay way = WorkshopWeeks.PARCEL;
        LocalDateTime friday = LocalDateTime.of(2026, 12, 4, 16, 1);
        assertThat(way.leaves(friday, FreeDays.NONE)).isEqualTo(LocalDateTime.of(2026, 12, 7, 16, 0));
        assertThat(way.leaves(friday, FreeDays.holidays(Set.of(LocalDate.of(2026, 12, 7)))))
                .isEqualTo(LocalDateTime.of(2026, 12, 8, 16, 0));
        assertThat(way.arrives(LocalDate.of(2026, 12, 4), FreeDays.NONE)).isEqualTo(LocalDate.of(2026, 12, 7));
    }

    @Test
    void the_latest_hand_over_is_the_last_that_still_arrives_for_every_day_of_a_year() {
        FreeDays holidays = FreeDays.holidays(
                Set.of(LocalDate.of(2026, 12, 25), LocalDate.of(2027, 1, 1), LocalDate.of(2027, 3, 29)));
        for (int d = 0; d < 365; d++) {
            LocalDate by = MONDAY.toLocalDate().plusDays(d);
            LocalDate leaves = WorkshopWeeks.PARCEL.latestHandOver(by, holidays).toLocalDate();
            assertThat(WorkshopWeeks.PARCEL.arrives(leaves, holidays)).isBeforeOrEqualTo(by);
            LocalDateTime next = WorkshopWeeks.PARCEL.leaves(leaves.plusDays(1).atStartOfDay(), holidays);
            assertThat(WorkshopWeeks.PARCEL.arrives(next.toLocalDate(), holidays))
                    .isAfter(by);
        }
    }

    @Test
    void one_more_order_never_breaks_the_promise_of_another_in_40_random_weeks() {
        for (int seed = 0; seed < 40; seed++) {
            List<Job> jobs = WorkshopWeeks.random(8 + seed % 10, 1000 + seed);
            Schedule before = scheduler.plan(calendar, jobs, MONDAY);
            List<Task> fresh = WorkshopWeeks.whole(25, "birch 3");
            Forecast forecast = new PromiseDate(calendar, jobs, MONDAY, scheduler)
                    .forecast(fresh, WorkshopWeeks.COLLECTION)
                    .orElseThrow();
            assertThat(forecast.rush().orElse(forecast.promised()))
                    .as("seed " + seed)
                    .isBeforeOrEqualTo(forecast.promised());
            List<Job> all = new ArrayList<>(jobs);
            all.add(Job.of(999, forecast.handOver(), fresh));
            Schedule after = scheduler.plan(calendar, all, MONDAY);
            assertThat(after.late()).as("seed " + seed).isLessThanOrEqualTo(before.late());
        }
    }

    @Test
    void a_full_laser_is_named_as_the_narrow_place_and_rush_is_earlier() {
        List<Job> jobs = new ArrayList<>(WorkshopWeeks.overloadedLaser());
        jobs.replaceAll(job -> job.dueBy(job.due().plusDays(14)));
        Forecast forecast = new PromiseDate(calendar, jobs, MONDAY, scheduler)
                .forecast(WorkshopWeeks.whole(60, "poplar 4").subList(4, 9), WorkshopWeeks.COLLECTION)
                .orElseThrow();
        Forecast full = new PromiseDate(calendar, WorkshopWeeks.overloadedLaser(), MONDAY, scheduler)
                .forecast(WorkshopWeeks.whole(60, "poplar 4").subList(4, 9), WorkshopWeeks.COLLECTION)
                .orElseThrow();
        assertThat(full.narrow()).contains(Stage.Resource.LASER);
        assertThat(full.cause().key()).isEqualTo("planning.cause.full.LASER");
        assertThat(full.promised()).isAfter(forecast.promised());
    }

    @Test
    void nobody_at_work_means_no_date() {
        WorkingCalendar nobody =
                new WorkingCalendar(List.of(), OpenHours.NONE, OpenHours.NONE, FreeDays.NONE, List.of());
        assertThat(new PromiseDate(nobody, List.of(), MONDAY, scheduler)
                        .forecast(WorkshopWeeks.whole(20, "birch 3"), WorkshopWeeks.PARCEL))
                .isEmpty();
    }
}
