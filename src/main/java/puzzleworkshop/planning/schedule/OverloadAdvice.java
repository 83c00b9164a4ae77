package puzzleworkshop.planning.schedule;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import puzzleworkshop.planning.calendar.OpenHours.Span;
import puzzleworkshop.planning.calendar.Worker;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.calendar.WorkingCalendar.Evening;
import puzzleworkshop.planning.schedule.Schedule.Outlook;
import puzzleworkshop.workshop.Stage;

/**
 * What gives when not everything can be on time: which customers to warn so that the fewest are late, or which evening
 * to work instead, with numbers.
 *
 * @param narrow the resource that is short
 * @param until by when the work on it is due
 * @param neededMinutes of it asked for until then
 * @param availableMinutes of it open until then
 * @param lateByDate orders that would be late if all were done simply in the order of their dates
 * @param costByDate what lateness would cost then, in points of {@link LatenessCost}
 * @param cost what it costs in the plan
 * @param fewestLate late orders that the narrow place alone forces (Moore and Hodgson), whatever the sequence
 * @param warn the orders that the plan makes late, first due first
 * @param evenings ways to work longer that make fewer late, the best first
 */
public record OverloadAdvice(
        Stage.Resource narrow,
        LocalDateTime until,
        int neededMinutes,
        int availableMinutes,
        int lateByDate,
        double costByDate,
        double cost,
        int fewestLate,
        List<Outlook> warn,
        List<Longer> evenings) {

    private static final int DAYS_AHEAD = 6;
    private static final int MOST_EVENINGS = 3;
    private static final int[] LENGTHS = {60, 120, 180};
    /** No evening runs longer than this, in minutes after midnight. */
    private static final int NIGHT = 22 * 60;

    /**
     * One way of working longer.
     *
     * @param evenings to be worked, in the order of days
     * @param minutes of extra work in all
     * @param lateAfter orders still late then
     * @param savedMinutes lateness saved in sum, on the clock
     */
    public record Longer(List<Evening> evenings, int minutes, int lateAfter, long savedMinutes) {

        public Longer {
            evenings = List.copyOf(evenings);
        }
    }

    public int shortMinutes() {
        return Math.max(0, neededMinutes - availableMinutes);
    }

    /** Empty when the plan keeps every promise that can still be kept and nothing is late. */
    public static Optional<OverloadAdvice> of(
            Scheduler scheduler, WorkingCalendar calendar, List<Job> jobs, LocalDateTime now, Schedule plan) {
        if (plan.late() == 0) {
            return Optional.empty();
        }
        SchedulingProblem shop = scheduler.shop(calendar, jobs, now);
        ListScheduler byDate = new ListScheduler(shop);
        int[] dates = Scheduler.seeds(shop, byDate).getFirst();
        SequenceScore simply = byDate.lay(dates);
        byDate.cutsFirst(true);
        SequenceScore laserFirst = byDate.lay(dates);
        simply = laserFirst.compareTo(simply) < 0 ? laserFirst : simply;
        Bottleneck narrow = Bottleneck.of(shop);
        int[] all = IntStream.range(0, jobs.size()).toArray();
        int fewest = OneMachine.fewestLate(Bottleneck.works(shop, narrow.resource(), all))
                .late()
                .size();
        List<Outlook> warn = plan.outlooks().values().stream()
                .filter(Outlook::isLate)
                .sorted(Comparator.comparing(Outlook::due).thenComparing(Outlook::job))
                .toList();
        return Optional.of(new OverloadAdvice(
                narrow.resource(),
                shop.moment(narrow.until()),
                narrow.needed(),
                narrow.available(),
                simply.late(),
                simply.cost() + simply.waitingCost(),
                plan.cost(),
                fewest,
                warn,
                longer(scheduler.withTries(60), calendar, jobs, now, plan, narrow.resource())));
    }

    private static List<Longer> longer(
            Scheduler scheduler,
            WorkingCalendar calendar,
            List<Job> jobs,
            LocalDateTime now,
            Schedule plan,
            Stage.Resource narrow) {
        List<Longer> found = new ArrayList<>();
        List<Evening> agreed = new ArrayList<>();
        WorkingCalendar longer = calendar;
        int late = plan.late();
        for (int round = 0; round < MOST_EVENINGS && late > 0; round++) {
            List<Longer> options = new ArrayList<>();
            for (int d = 0; d <= DAYS_AHEAD; d++) {
                LocalDate day = now.toLocalDate().plusDays(d);
                if (agreed.stream().anyMatch(e -> e.day().equals(day))) {
                    continue;
                }
                for (int length : LENGTHS) {
                    Optional<Evening> evening = evening(longer, now, day, length, narrow);
                    if (evening.isEmpty()) {
                        continue;
                    }
                    Schedule then = scheduler.plan(longer.with(evening.get()), jobs, now);
                    List<Evening> all = new ArrayList<>(agreed);
                    all.add(evening.get());
                    all.sort(Comparator.comparing(Evening::day));
                    options.add(new Longer(
                            all,
                            all.stream().mapToInt(e -> e.span().minutes()).sum(),
                            then.late(),
                            plan.lateMinutes() - then.lateMinutes()));
                }
            }
            options.sort(Comparator.comparingInt(Longer::lateAfter)
                    .thenComparingInt(Longer::minutes)
                    .thenComparing(
                            Comparator.comparingLong(Longer::savedMinutes).reversed()));
            int before = late;
            Set<LocalDate> named = new HashSet<>();
            options.stream()
                    .filter(o -> o.lateAfter() < before)
                    .filter(o -> named.add(o.evenings().getFirst().day()))
                    .limit(round == 0 ? 3 : 1)
                    .forEach(found::add);
            if (options.isEmpty() || options.getFirst().lateAfter() >= late) {
                break;
            }
            late = options.getFirst().lateAfter();
            for (Evening evening : options.getFirst().evenings()) {
                if (!agreed.contains(evening)) {
                    agreed.add(evening);
                    longer = longer.with(evening);
                }
            }
        }
        found.sort(Comparator.comparingInt(Longer::lateAfter).thenComparingInt(Longer::minutes));
        return List.copyOf(found);
    }

    /** An evening right after the day's hours of somebody who may do the narrow work. */
    private static Optional<Evening> evening(
            WorkingCalendar calendar, LocalDateTime now, LocalDate day, int minutes, Stage.Resource narrow) {
        Stage stage = narrow == Stage.Resource.PRINTER ? Stage.PRINT : Stage.CUT;
        for (Worker person : calendar.people()) {
            List<Span> spans = calendar.of(person, day);
            if (spans.isEmpty() || !person.does().contains(stage)) {
                continue;
            }
            int from = spans.getLast().to();
            if (day.equals(now.toLocalDate())) {
                from = Math.max(from, now.getHour() * 60 + now.getMinute());
            }
            if (from + minutes <= NIGHT) {
                return Optional.of(new Evening(person.name(), day, new Span(from, from + minutes)));
            }
        }
        return Optional.empty();
    }
}
