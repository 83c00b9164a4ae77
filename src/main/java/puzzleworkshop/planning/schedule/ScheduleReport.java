package puzzleworkshop.planning.schedule;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.planning.schedule.Schedule.Outlook;
import puzzleworkshop.planning.schedule.SchedulingProblem.Operation;
import puzzleworkshop.workshop.Stage;

/** Reads a laid plan back into words: what is done when, and what it means for each order. */
final class ScheduleReport {

    private static final int LEAST_TO_SPARE = 60;

    private final SchedulingProblem shop;
    private final Timetable laid;

    ScheduleReport(SchedulingProblem shop, Timetable laid) {
        this.shop = shop;
        this.laid = laid;
    }

    Schedule schedule() {
        List<Schedule.Work> work = new ArrayList<>();
        Map<Long, Outlook> outlooks = new HashMap<>();
        for (int j = 0; j < shop.jobs.size(); j++) {
            for (int o : shop.route[j]) {
                if (laid.end[o] < FreeTime.NEVER) {
                    work.add(work(j, o));
                }
            }
            outlooks.put(shop.jobs.get(j).id(), outlook(j));
        }
        work.sort(Comparator.comparing(Schedule.Work::start)
                .thenComparing(Schedule.Work::stage)
                .thenComparing(Schedule.Work::job));
        return Schedule.of(shop.moment(shop.now), work, outlooks, Loads.of(shop, laid), laid.setUps());
    }

    private Schedule.Work work(int j, int o) {
        Operation operation = shop.operations.get(o);
        Optional<String> by = laid.person[o] < 0
                ? Optional.empty()
                : Optional.of(shop.calendar.people().get(laid.person[o]).name());
        return new Schedule.Work(
                shop.jobs.get(j).id(),
                operation.stage,
                shop.moment(laid.start[o]),
                shop.moment(laid.end[o]),
                by,
                laid.setUpSaved[o],
                operation.members.size());
    }

    private Outlook outlook(int j) {
        Job job = shop.jobs.get(j);
        int finish = laid.finish(j);
        LocalDateTime end = finish >= FreeTime.NEVER ? Schedule.NEVER : shop.moment(finish);
        int slack = finish >= FreeTime.NEVER ? Integer.MIN_VALUE : openBetween(finish, shop.due[j]);
        boolean late = finish > shop.due[j];
        long lateDays = late ? Math.max(0, ChronoUnit.DAYS.between(job.due().toLocalDate(), end.toLocalDate())) : 0;
        DueVerdict verdict = job.waitsFor().isPresent()
                ? DueVerdict.WAITING
                : late ? DueVerdict.LATE : slack < enoughToSpare(j) ? DueVerdict.TIGHT : DueVerdict.ON_TIME;
        Wait wait = wait(j);
        Optional<LocalDate> mainDay = shop.route[j].length == 0 || finish >= FreeTime.NEVER
                ? Optional.empty()
                : Optional.of(shop.moment(laid.start[shop.route[j][SchedulingProblem.mainTask(job)]])
                        .toLocalDate());
        return new Outlook(
                job.id(),
                end,
                job.due(),
                slack,
                lateDays,
                verdict,
                mainDay,
                job.waitsFor(),
                wait.narrow(),
                shop.cost(j, finish),
                cause(j, finish, slack, wait, verdict, lateDays));
    }

    /**
     * With this much to spare an order is not tight: one mishap, its longest stage done once more, still leaves it on
     * time; an hour at least, for what comes between. (Common practice; the reserve of a new promise is larger, since
     * nothing is known of what will come until then.)
     */
    private int enoughToSpare(int j) {
        return Math.max(LEAST_TO_SPARE, longest(j).map(Task::minutes).orElse(0));
    }

    private Optional<Task> longest(int j) {
        return shop.jobs.get(j).tasks().stream().max(Comparator.comparingInt(Task::minutes));
    }

    /** Working minutes from one moment to the other, of whoever is there longest; negative backwards. */
    private int openBetween(int from, int to) {
        int most = 0;
        for (int p = SchedulingProblem.FIRST_PERSON; p < shop.open.length; p++) {
            most = Math.max(most, shop.open[p].between(Math.min(from, to), Math.max(from, to)));
        }
        return from <= to ? most : -most;
    }

    /** What a job loses most time to, and until when. */
    private record Wait(Optional<Stage.Resource> narrow, int minutes, int until, int resting) {}

    private Wait wait(int j) {
        int[] lost = new int[Stage.Resource.values().length];
        int[] until = new int[lost.length];
        int resting = 0;
        for (int k = 0; k < shop.route[j].length; k++) {
            int o = shop.route[j][k];
            Operation operation = shop.operations.get(o);
            int machine = operation.stage.resource().ordinal();
            int hands = Stage.Resource.HANDS.ordinal();
            lost[machine] += laid.waitedForMachine[o];
            lost[hands] += laid.waitedForHands[o];
            if (laid.waitedForMachine[o] > 0) {
                boolean interrupted = operation.setUp + operation.work > shop.longest[operation.machine()];
                until[machine] = interrupted ? laid.end[o] : laid.start[o];
            }
            if (laid.waitedForHands[o] > 0) {
                until[hands] = laid.start[o];
            }
            resting += k == 0 ? 0 : Math.max(0, laid.rested(j, k) - laid.end[shop.route[j][k - 1]]);
        }
        int most = 0;
        for (int r = 1; r < lost.length; r++) {
            most = lost[r] > lost[most] ? r : most;
        }
        // A quarter of an hour in a queue explains nothing.
        return lost[most] <= 15
                ? new Wait(Optional.empty(), 0, 0, resting)
                : new Wait(Optional.of(Stage.Resource.values()[most]), lost[most], until[most], resting);
    }

    private Sentence cause(int j, int finish, int slack, Wait wait, DueVerdict verdict, long lateDays) {
        Job job = shop.jobs.get(j);
        if (job.waitsFor().isPresent()) {
            return waits(job.waitsFor().get(), finish, finish > shop.due[j], lateDays);
        }
        if (shop.route[j].length == 0) {
            return Sentence.of("planning.cause.done");
        }
        if (finish >= FreeTime.NEVER) {
            return Sentence.of("planning.cause.never");
        }
        if (shop.due[j] < shop.now) {
            return Sentence.of("planning.cause.overdue", job.due().toLocalDate());
        }
        LocalDate mainDay = shop.moment(laid.start[shop.route[j][SchedulingProblem.mainTask(job)]])
                .toLocalDate();
        if (finish > shop.due[j]
                && job.pinned().isPresent()
                && !job.pinned().get().isBefore(mainDay)) {
            return Sentence.of("planning.cause.pinned", job.pinned().get());
        }
        if (verdict == DueVerdict.TIGHT) {
            Task longest = longest(j).orElseThrow();
            return longest.minutes() >= LEAST_TO_SPARE
                    ? Sentence.of(
                            "planning.cause.tight.again",
                            Minutes.of(slack),
                            Sentence.of(longest.stage().textKey()),
                            Minutes.of(longest.minutes()))
                    : Sentence.of("planning.cause.tight", Minutes.of(slack));
        }
        boolean laterToday = wait.until() < 1440;
        if (wait.narrow().isPresent() && !(laterToday && verdict == DueVerdict.ON_TIME)) {
            return Sentence.of(
                    "planning.cause.full." + wait.narrow().get().name(),
                    shop.moment(wait.until()).toLocalDate());
        }
        if (wait.resting() >= 120 && finish > shop.due[j]) {
            return Sentence.of("planning.cause.rests", Math.round(wait.resting() / 60.0));
        }
        return Sentence.of("planning.cause.ownWork", Minutes.of(minutes(j)));
    }

    /** For what and since when, and what is promised on the assumption that the wait ends with the next working day. */
    private Sentence waits(Job.Wait wait, int finish, boolean late, long lateDays) {
        Sentence waits = Sentence.of(wait.forWhat().textKey(), wait.since());
        if (finish >= FreeTime.NEVER) {
            return waits;
        }
        LocalDate ready = shop.moment(finish).toLocalDate();
        return late
                ? Sentence.of("planning.cause.resumes.late", waits, wait.until().toLocalDate(), ready, lateDays)
                : Sentence.of("planning.cause.resumes", waits, wait.until().toLocalDate(), ready);
    }

    private int minutes(int j) {
        return shop.jobs.get(j).tasks().stream().mapToInt(Task::minutes).sum();
    }
}
