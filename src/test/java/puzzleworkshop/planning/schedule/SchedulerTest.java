package puzzleworkshop.planning.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static puzzleworkshop.planning.schedule.WorkshopWeeks.MONDAY;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.planning.calendar.FreeDays;
import puzzleworkshop.planning.calendar.OpenHours;
import puzzleworkshop.planning.calendar.Worker;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.schedule.Job.Wait;
import puzzleworkshop.planning.schedule.OneMachine.Work;
import puzzleworkshop.support.Seeds;
import puzzleworkshop.workshop.Stage;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SchedulerTest {

    private final Scheduler scheduler = Scheduler.usual();
    private final WorkingCalendar calendar = WorkshopWeeks.twoPeople();

    @Test
    void one_order_alone_rests_its_laminate_over_night_and_is_cut_the_next_day() {
        Schedule plan = scheduler.plan(
                calendar, List.of(Job.of(1, MONDAY.plusDays(2), WorkshopWeeks.whole(30, "birch 3"))), MONDAY);
        List<Schedule.Work> work = plan.workOf(1);
        assertThat(work).hasSize(9);
        assertThat(work.get(0).start()).isEqualTo(MONDAY);
        assertThat(work.get(1).end()).isEqualTo(MONDAY.plusMinutes(18));
        Schedule.Work prep = work.get(2);
        assertThat(prep.start()).as("a board needs no laminate").isEqualTo(MONDAY.plusMinutes(18));
        Schedule.Work stick = work.get(3);
        assertThat(stick.start()).isEqualTo(MONDAY.plusDays(1));
        Schedule.Work cut = work.get(5);
        assertThat(cut.start()).isEqualTo(LocalDateTime.of(2026, 12, 1, 9, 0));
        assertThat(cut.end()).isEqualTo(cut.start().plusMinutes(38));
        assertThat(plan.of(1).verdict()).isEqualTo(DueVerdict.ON_TIME);
        assertThat(plan.of(1).mainDay()).contains(LocalDate.of(2026, 12, 1));
    }

    @Test
    void while_what_was_laminated_settles_its_board_is_prepared_and_only_the_sticking_waits() {
        List<Task> tasks = WorkshopWeeks.whole(30, "birch 3");
        Job laminated = new Job(
                1,
                MONDAY.plusDays(2),
                tasks.subList(2, tasks.size()),
                Map.of(Stage.STICK, MONDAY.plusHours(3)),
                Optional.empty(),
                Optional.empty(),
                1);
        List<Schedule.Work> work =
                scheduler.plan(calendar, List.of(laminated), MONDAY).workOf(1);
        assertThat(work.get(0).stage()).isEqualTo(Stage.SHEET_PREP);
        assertThat(work.get(0).start()).isEqualTo(MONDAY);
        assertThat(work.get(1).stage()).isEqualTo(Stage.STICK);
        assertThat(work.get(1).start()).isEqualTo(MONDAY.plusHours(3));
    }

    @Test
    void nobody_and_no_machine_does_two_things_at_once_in_300_random_weeks() {
        for (int seed = 0; seed < 300; seed++) {
            List<Job> jobs = WorkshopWeeks.random(3 + seed % 12, seed);
            Schedule plan = new Scheduler(30, 240, Batching.USUAL).plan(calendar, jobs, MONDAY);
            String which = "seed " + seed;
            apart(which, plan, Stage.Resource.LASER);
            apart(which, plan, Stage.Resource.PRINTER);
            handsApart(which, plan);
            for (Job job : jobs) {
                List<Schedule.Work> work = plan.workOf(job.id());
                assertThat(work).as(which).hasSameSizeAs(job.tasks());
                for (int k = 1; k < work.size(); k++) {
                    assertThat(work.get(k).start())
                            .as(which)
                            .isAfterOrEqualTo(work.get(k - 1).end());
                }
                for (int k = 0; k < work.size(); k++) {
                    rested(which, work, k, job.tasks().get(k).rest());
                }
            }
        }
    }

    private static void rested(String which, List<Schedule.Work> work, int k, int rest) {
        Optional<Stage> held = work.get(k).stage().heldUpByRest();
        work.stream()
                .filter(later -> held.isPresent() && later.stage().compareTo(held.get()) >= 0)
                .forEach(later -> assertThat(Duration.between(work.get(k).end(), later.start())
                                .toMinutes())
                        .as(which)
                        .isGreaterThanOrEqualTo(rest));
    }

    private static void apart(String which, Schedule plan, Stage.Resource resource) {
        Schedule.Work before = null;
        for (Schedule.Work work : plan.work()) {
            if (work.stage().resource() == resource) {
                if (before != null && !(before.start().equals(work.start()) && work.batchSize() > 1)) {
                    assertThat(work.start()).as(which).isAfterOrEqualTo(before.end());
                }
                before = work;
            }
        }
    }

    private static void handsApart(String which, Schedule plan) {
        Map<String, List<Schedule.Work>> byPerson = plan.work().stream()
                .filter(w -> w.by().isPresent() && w.stage().resource() == Stage.Resource.HANDS)
                .collect(Collectors.groupingBy(w -> w.by().orElseThrow()));
        byPerson.forEach((person, works) -> {
            List<Schedule.Work> sorted = works.stream()
                    .filter(w -> w.end().isAfter(w.start()))
                    .sorted(Comparator.comparing(Schedule.Work::start))
                    .toList();
            for (int i = 1; i < sorted.size(); i++) {
                if (!sorted.get(i).start().equals(sorted.get(i - 1).start())
                        || sorted.get(i).batchSize() == 1) {
                    assertThat(sorted.get(i).start())
                            .as(which + " " + person)
                            .isAfterOrEqualTo(sorted.get(i - 1).end());
                }
            }
        });
    }

    @Test
    void the_same_work_gives_the_same_plan() {
        List<Job> jobs = WorkshopWeeks.random(40, 3);
        assertThat(scheduler.plan(calendar, jobs, MONDAY)).isEqualTo(scheduler.plan(calendar, jobs, MONDAY));
    }

    /** On one machine the judge is Moore and Hodgson's rule, itself judged by all sequences in OneMachineTest. */
    @Test
    void on_one_machine_alone_no_more_are_late_than_must_be_in_1_000_random_cases() {
        WorkingCalendar always = new WorkingCalendar(
                List.of(Worker.of("Mila", new OpenHours(allDay()))),
                new OpenHours(allDay()),
                OpenHours.NONE,
                FreeDays.NONE,
                List.of());
        Random random = new Random(Seeds.from(11));
        LocalDateTime midnight = LocalDate.of(2026, 11, 30).atStartOfDay();
        for (int round = 0; round < 1000; round++) {
            int n = 2 + random.nextInt(11);
            List<Job> jobs = new ArrayList<>();
            List<Work> works = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                int time = 1 + random.nextInt(60);
                int due = random.nextInt(n * 35);
                jobs.add(Job.of(i, midnight.plusMinutes(due), List.of(Task.byHand(Stage.STICK, 0, time, 0))));
                works.add(new Work(i, time, due));
            }
            Schedule plan = new Scheduler(200, 0, Batching.USUAL).plan(always, jobs, midnight);
            assertThat(plan.late())
                    .as("round " + round)
                    .isEqualTo(OneMachine.fewestLate(works).late().size());
        }
    }

    private static Map<DayOfWeek, List<OpenHours.Span>> allDay() {
        return Arrays.stream(DayOfWeek.values())
                .collect(Collectors.toMap(d -> d, d -> List.of(new OpenHours.Span(0, 1440))));
    }

    @Test
    void work_in_progress_stays_first_and_pinned_work_stays_on_its_day() {
        List<Job> jobs = new ArrayList<>(WorkshopWeeks.random(20, 5));
        List<Task> cutting = new ArrayList<>(WorkshopWeeks.whole(60, "birch 3").subList(5, 9));
        cutting.set(0, cutting.getFirst().startedBefore(20));
        jobs.add(Job.of(500, MONDAY.plusDays(9), cutting));
        LocalDate thursday = MONDAY.toLocalDate().plusDays(3);
        jobs.add(Job.of(
                        501,
                        MONDAY.plusDays(9),
                        WorkshopWeeks.whole(25, "birch 3").subList(3, 9))
                .pinnedTo(thursday));
        Schedule plan = scheduler.plan(calendar, jobs, MONDAY);
        Schedule.Work cut = plan.workOf(500).getFirst();
        assertThat(cut.start()).isEqualTo(MONDAY.plusHours(1));
        assertThat(Duration.between(cut.start(), cut.end()).toMinutes()).isEqualTo(48);
        assertThat(plan.of(501).mainDay()).contains(thursday);
    }

    @Test
    void cuts_of_the_same_board_behind_one_another_save_their_set_up() {
        List<Job> jobs = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            List<Task> cut = List.of(Task.byMachine(Stage.CUT, 8, 20, i % 2 == 0 ? "birch 3" : "poplar 4"));
            jobs.add(Job.of(i, MONDAY.plusDays(1).withHour(16), cut));
        }
        Schedule plan = scheduler.plan(calendar, jobs, MONDAY);
        assertThat(plan.setUps()).isEqualTo(2);
        assertThat(plan.work()).filteredOn(Schedule.Work::setUpSaved).hasSize(2);
    }

    @Test
    void prints_of_the_same_paper_are_ganged_and_share_one_set_up() {
        List<Job> jobs = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            jobs.add(Job.of(i, MONDAY.plusDays(3), WorkshopWeeks.whole(20, "birch 3")));
        }
        Schedule plan = scheduler.plan(calendar, jobs, MONDAY);
        assertThat(plan.work()).filteredOn(w -> w.stage() == Stage.PRINT).allSatisfy(w -> {
            assertThat(w.batchSize()).isEqualTo(3);
            assertThat(Duration.between(w.start(), w.end()).toMinutes()).isEqualTo(5 + 3 * 4);
        });
    }

    @Test
    void an_order_that_waits_says_for_what_and_since_when() {
        LocalDate tuesday = MONDAY.toLocalDate().minusDays(6);
        Job waiting = Job.of(1, MONDAY.plusDays(4), WorkshopWeeks.whole(20, "birch 3"))
                .waiting(new Wait(Wait.For.APPROVAL, tuesday, Stage.PRINT, MONDAY.plusDays(1)));
        Schedule plan = scheduler.plan(calendar, List.of(waiting), MONDAY);
        assertThat(plan.of(1).verdict()).isEqualTo(DueVerdict.WAITING);
        LocalDate ready = plan.of(1).finish().toLocalDate();
        assertThat(plan.of(1).cause())
                .isEqualTo(Sentence.of(
                        "planning.cause.resumes",
                        Sentence.of("planning.cause.waits.APPROVAL", tuesday),
                        MONDAY.plusDays(1).toLocalDate(),
                        ready));
        assertThat(plan.workOf(1).getFirst().start()).isEqualTo(MONDAY.plusDays(1));
    }

    @Test
    void without_anybody_at_work_nothing_is_ever_finished_and_the_plan_says_so() {
        WorkingCalendar nobody =
                new WorkingCalendar(List.of(), OpenHours.NONE, OpenHours.NONE, FreeDays.NONE, List.of());
        Schedule plan = scheduler.plan(nobody, WorkshopWeeks.random(5, 2), MONDAY);
        assertThat(plan.late()).isEqualTo(5);
        assertThat(plan.of(1).finish()).isEqualTo(Schedule.NEVER);
        assertThat(plan.of(1).cause().key()).isEqualTo("planning.cause.never");
    }

    @Test
    void a_cut_longer_than_any_opening_of_the_laser_goes_on_the_next_day() {
        Job long_ = Job.of(1, MONDAY.plusDays(9), List.of(Task.byMachine(Stage.CUT, 10, 400, "birch 3")));
        Schedule.Work cut =
                scheduler.plan(calendar, List.of(long_), MONDAY).workOf(1).getFirst();
        assertThat(cut.start()).isEqualTo(MONDAY.plusHours(1));
        // 9 to 12 on two days: from 12 to 13 the maker is at lunch, and the laser is never left alone.
        assertThat(cut.end()).isEqualTo(LocalDateTime.of(2026, 12, 2, 9, 50));
    }
}
