package puzzleworkshop.planning.schedule;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import puzzleworkshop.planning.calendar.OpenHours.Span;
import puzzleworkshop.planning.calendar.Worker;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.workshop.Stage;

/**
 * Calendar and jobs brought into plain numbers, so that hundreds of sequences can be tried in a second: minutes from
 * midnight of the first day, people and machines as indices, batches as single operations.
 */
final class SchedulingProblem {

    static final int LASER = 0;
    static final int PRINTER = 1;
    /** People follow the machines among the resources. */
    static final int FIRST_PERSON = 2;

    /** How far ahead the calendar is laid out. A job that finds no place in it has no end. */
    private static final int DAYS = 120;

    /** One thing done in one go, for one job or a batch. */
    static final class Operation {
        final Stage stage;
        final List<Integer> members = new ArrayList<>();
        int setUp;
        int work;
        int handsBesideSetUp;
        int setting;
        int notBefore;
        boolean begun;

        Operation(Stage stage) {
            this.stage = stage;
        }

        int hands() {
            return setUp + handsBesideSetUp;
        }

        int machine() {
            return switch (stage.resource()) {
                case LASER -> LASER;
                case PRINTER -> PRINTER;
                case HANDS -> -1;
            };
        }
    }

    final LocalDateTime origin;
    final int now;
    final WorkingCalendar calendar;
    final List<Job> jobs;
    final List<Operation> operations = new ArrayList<>();
    /** Per job: its operations, and the rest after each. */
    final int[][] route;

    final int[][] rest;
    /** Per job and operation: which of its later ones the rest after it holds up; the length of the route for none. */
    final int[][] heldByRest;
    /** Per job and operation: it cannot begin before. */
    final int[][] ready;

    final int[] due;
    /** Per job: the first of its operations that waits for somebody or something, -1 for none, and until when. */
    final int[] held;

    final int[] heldUntil;
    final FreeTime[] open;
    final int[] longest;
    final boolean[][] may;
    final LatenessCost cost;
    /** When anybody is in the workshop. */
    private final FreeTime present;

    private final double minutesADay;
    /** Per job: working minutes that had passed since its due moment when the plan begins. */
    private final int[] overdue;

    SchedulingProblem(
            WorkingCalendar calendar, List<Job> given, LocalDateTime now, Batching batching, LatenessCost cost) {
        this.calendar = calendar;
        this.origin = now.toLocalDate().atStartOfDay();
        this.now = minute(now);
        this.jobs = batching.applyTo(given, now);
        this.cost = cost;
        this.open = layOut();
        this.present = layOut(day -> calendar.of(Stage.Resource.HANDS, day));
        this.minutesADay = minutesADay();
        this.longest = new int[open.length];
        for (int i = 0; i < open.length; i++) {
            longest[i] = open[i].longestSpan();
        }
        this.may = new boolean[Stage.values().length][calendar.people().size()];
        for (Stage stage : Stage.values()) {
            for (int p = 0; p < calendar.people().size(); p++) {
                may[stage.ordinal()][p] = calendar.people().get(p).does().contains(stage);
            }
        }
        route = new int[jobs.size()][];
        rest = new int[jobs.size()][];
        heldByRest = new int[jobs.size()][];
        ready = new int[jobs.size()][];
        due = new int[jobs.size()];
        held = new int[jobs.size()];
        heldUntil = new int[jobs.size()];
        overdue = new int[jobs.size()];
        Map<String, Integer> batches = new HashMap<>();
        Map<String, Integer> settings = new HashMap<>();
        settings.put("", -1);
        for (int j = 0; j < jobs.size(); j++) {
            lay(j, batches, settings);
        }
    }

    /** Minutes from the origin; moments beyond the calendar count as its end. */
    int minute(LocalDateTime moment) {
        long minutes = ChronoUnit.MINUTES.between(origin, moment);
        return (int) Math.clamp(minutes, -2L * DAYS * 1440, 4L * DAYS * 1440);
    }

    LocalDateTime moment(int minute) {
        return origin.plusMinutes(minute);
    }

    private void lay(int j, Map<String, Integer> batches, Map<String, Integer> settings) {
        Job job = jobs.get(j);
        due[j] = minute(job.due());
        overdue[j] = overdue(job.due());
        route[j] = new int[job.tasks().size()];
        rest[j] = new int[job.tasks().size()];
        heldByRest[j] = new int[job.tasks().size()];
        ready[j] = new int[job.tasks().size()];
        held[j] = -1;
        job.waitsFor().ifPresent(wait -> keepWaiting(j, job, wait));
        int main = mainTask(job);
        for (int k = 0; k < job.tasks().size(); k++) {
            Task task = job.tasks().get(k);
            // What waits is not done together with what is ready: the ready ones would wait with it.
            String waiting = job.waitsBefore(task.stage()) ? " waiting" : "";
            String batch =
                    task.batch().map(b -> task.stage() + " " + b + waiting).orElse(task.stage() + "#" + job.id());
            int index = batches.computeIfAbsent(batch, name -> {
                operations.add(new Operation(task.stage()));
                return operations.size() - 1;
            });
            Operation operation = operations.get(index);
            operation.members.add(j);
            int done = Math.min(task.begun().orElse(0), task.minutes());
            int setUpLeft = Math.max(0, task.setUp() - done);
            int workLeft = task.work() - Math.max(0, done - task.setUp());
            operation.begun |= task.begun().isPresent();
            // What has run over its time is still not finished: reckon with a tenth more.
            int work = task.begun().isPresent() ? Math.max(workLeft, Math.max(1, task.minutes() / 10)) : workLeft;
            int beyondSetUp = Math.max(0, task.hands() - task.setUp());
            operation.setUp = Math.max(operation.setUp, setUpLeft);
            operation.work += work;
            operation.handsBesideSetUp += Math.min(work, beyondSetUp);
            operation.setting = settings.computeIfAbsent(task.setting(), s -> settings.size());
            if (k == main && task.begun().isEmpty()) {
                int pinned = job.pinned()
                        .map(LocalDate::atStartOfDay)
                        .map(this::minute)
                        .orElse(0);
                operation.notBefore = Math.max(operation.notBefore, pinned);
            }
            route[j][k] = index;
            rest[j][k] = task.rest();
            heldByRest[j][k] = task.stage()
                    .heldUpByRest()
                    .map(stage -> firstFrom(job, stage))
                    .orElse(job.tasks().size());
            ready[j][k] =
                    Math.max(now, job.notBefore(task.stage()).map(this::minute).orElse(now));
        }
    }

    private void keepWaiting(int j, Job job, Job.Wait wait) {
        heldUntil[j] = minute(wait.until());
        int first = firstFrom(job, wait.before());
        held[j] = first < job.tasks().size() ? first : -1;
    }

    /** The place of the first task at the stage or a later one; the number of tasks when there is none. */
    private static int firstFrom(Job job, Stage stage) {
        int k = 0;
        while (k < job.tasks().size() && job.tasks().get(k).stage().compareTo(stage) < 0) {
            k++;
        }
        return k;
    }

    /** A job's minutes in an operation; of one that is done for several together, its share. */
    int share(int o) {
        Operation operation = operations.get(o);
        return (operation.setUp + operation.work) / operation.members.size();
    }

    /**
     * Per operation of a job: the minutes from its end to the job's at the least, when nothing but the job's own work and
     * rests takes time.
     */
    int[] after(int j) {
        int[] after = new int[route[j].length];
        for (int k = after.length - 2; k >= 0; k--) {
            after[k] = share(route[j][k + 1]) + after[k + 1];
            int held = heldByRest[j][k];
            if (held < after.length) {
                after[k] = Math.max(after[k], rest[j][k] + share(route[j][held]) + after[held]);
            }
        }
        return after;
    }

    /** The work that makes the day of an order: the cut while it is ahead, else whatever comes next. */
    static int mainTask(Job job) {
        for (int k = 0; k < job.tasks().size(); k++) {
            if (job.tasks().get(k).stage() == Stage.CUT) {
                return k;
            }
        }
        return 0;
    }

    /** Points for the job when it is handed over at that minute. */
    double cost(int job, int finish) {
        if (finish <= due[job]) {
            return 0;
        }
        double days = finish >= FreeTime.NEVER || minutesADay == 0
                ? LatenessCost.NEVER_DAYS
                : (overdue[job] + present.between(Math.max(now, due[job]), finish)) / minutesADay;
        return jobs.get(job).weight() * cost.of(Math.max(days, 1.0 / 1440));
    }

    /** Of a day on which anybody works, over four weeks. */
    private double minutesADay() {
        int days = 0;
        for (int d = 0; d < 28; d++) {
            days += calendar.isWorkingDay(origin.toLocalDate().plusDays(d)) ? 1 : 0;
        }
        return days == 0 ? 0 : (double) present.between(0, 28 * 1440) / days;
    }

    private int overdue(LocalDateTime due) {
        LocalDateTime from = due.isBefore(origin.minusDays(DAYS)) ? origin.minusDays(DAYS) : due;
        int sum = 0;
        for (LocalDateTime day = from.toLocalDate().atStartOfDay(); day.isBefore(moment(now)); day = day.plusDays(1)) {
            int begin = from.isAfter(day) ? (int) ChronoUnit.MINUTES.between(day, from) : 0;
            int end = (int) Math.min(1440, ChronoUnit.MINUTES.between(day, moment(now)));
            for (Span span : calendar.of(Stage.Resource.HANDS, day.toLocalDate())) {
                sum += Math.max(0, Math.min(span.to(), end) - Math.max(span.from(), begin));
            }
        }
        return sum;
    }

    private FreeTime[] layOut() {
        int people = calendar.people().size();
        FreeTime[] all = new FreeTime[FIRST_PERSON + people];
        all[LASER] = layOut(day -> calendar.of(Stage.Resource.LASER, day));
        all[PRINTER] = layOut(day -> calendar.of(Stage.Resource.PRINTER, day));
        for (int p = 0; p < people; p++) {
            Worker person = calendar.people().get(p);
            all[FIRST_PERSON + p] = layOut(day -> calendar.of(person, day));
        }
        return all;
    }

    private FreeTime layOut(Function<LocalDate, List<Span>> hours) {
        List<int[]> spans = new ArrayList<>();
        for (int d = 0; d < DAYS; d++) {
            for (Span span : hours.apply(origin.toLocalDate().plusDays(d))) {
                int from = Math.max(now, d * 1440 + span.from());
                int to = d * 1440 + span.to();
                if (from < to) {
                    spans.add(new int[] {from, to});
                }
            }
        }
        return new FreeTime(
                spans.stream().mapToInt(s -> s[0]).toArray(),
                spans.stream().mapToInt(s -> s[1]).toArray(),
                spans.size());
    }
}
