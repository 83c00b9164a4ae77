package puzzleworkshop.planning;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.orders.Order;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.planning.schedule.Job;
import puzzleworkshop.planning.schedule.Job.Wait;
import puzzleworkshop.planning.schedule.LatenessCost;
import puzzleworkshop.planning.schedule.Task;
import puzzleworkshop.progress.Rests;
import puzzleworkshop.progress.SoFar;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;

/** Turns orders into jobs of the plan: what each stage still takes by the workshop's standards, and by when. */
final class WorkOfOrders {

    private static final String STICKER = "sticker";
    private static final String FILM = "film";

    private final Map<Stage, StageStandard> standards;
    private final WorkingCalendar calendar;
    private final LocalDateTime now;
    private final ZoneId zone;
    private final LatenessCost cost;

    WorkOfOrders(
            Map<Stage, StageStandard> standards,
            WorkingCalendar calendar,
            LocalDateTime now,
            ZoneId zone,
            LatenessCost cost) {
        this.standards = standards;
        this.calendar = calendar;
        this.now = now;
        this.zone = zone;
        this.cost = cost;
    }

    /**
     * @param waitsFor what it waits for, if it does
     * @param together names of the batches that it belongs to, by stage
     * @param readyForWork the last thing the bench said, if anything
     * @param trial what a trial before its cut takes
     * @param paid whether money has come for it
     */
    Job job(
            Order order,
            DeliveryWay way,
            Optional<LocalDate> pinned,
            Optional<Wait> waitsFor,
            Map<Stage, String> together,
            Optional<SoFar> readyForWork,
            Minutes trial,
            boolean paid) {
        Stage next = order.next().orElseThrow();
        String board = order.board().material() + " " + order.board().grade() + " "
                + order.board().thickness().mm();
        List<Task> tasks = new ArrayList<>(tasks(
                next,
                stage -> standards
                        .get(stage)
                        .hands(order.quantity(), order.puzzle().pieces())
                        .value(),
                order.laser().plus(trial).value(),
                board));
        tasks.replaceAll(task -> together.containsKey(task.stage()) ? task.inBatch(together.get(task.stage())) : task);
        Optional<Integer> begun = readyForWork.flatMap(SoFar::begun);
        if (begun.isPresent()) {
            tasks.set(0, tasks.getFirst().startedBefore(begun.get()));
        }
        LocalDateTime due = order.promised()
                .map(day -> way.latestHandOver(day, calendar.free()))
                .orElse(now.plusYears(1));
        Map<Stage, LocalDateTime> rested = new EnumMap<>(Stage.class);
        readyForWork.ifPresent(soFar -> Rests.until(soFar.done(), next, standards)
                .forEach((stage, at) -> rested.put(stage, LocalDateTime.ofInstant(at, zone))));
        Optional<LocalDate> stillAhead = pinned.filter(day -> !day.isBefore(now.toLocalDate()));
        double weight = cost.weight(next != Stage.PRINT || begun.isPresent(), paid);
        return new Job(order.id().value(), due, tasks, rested, waitsFor, stillAhead, weight);
    }

    /** Work that is only asked about. */
    List<Task> tasks(NewWork work) {
        return tasks(
                Stage.PRINT,
                stage -> standards
                        .get(stage)
                        .hands(work.quantity(), work.piecesEach())
                        .value(),
                work.laser().value(),
                work.sameSettings());
    }

    /** An order that waits for somebody is reckoned to go on with the next working day. */
    LocalDateTime nextMorning() {
        LocalDate day = now.toLocalDate().plusDays(1);
        for (int i = 0; i < 60 && !calendar.isWorkingDay(day); i++) {
            day = day.plusDays(1);
        }
        return day.atStartOfDay();
    }

    private List<Task> tasks(Stage from, ToDoubleFunction<Stage> hands, double laser, String settings) {
        List<Task> tasks = new ArrayList<>();
        for (Stage stage : Stage.values()) {
            if (stage.compareTo(from) < 0) {
                continue;
            }
            StageStandard standard = standards.get(stage);
            int byHand = (int) Math.ceil(hands.applyAsDouble(stage));
            int setUp = (int) Math.min(byHand, Math.round(standard.setUp().value()));
            double machine = stage == Stage.CUT ? laser : 0;
            // Loading and unloading go on while nothing else can run on the machine, so they count for both.
            int work = (int) Math.ceil(Math.max(byHand - setUp, 0) + machine);
            int rest = Math.toIntExact(standard.rest().toMinutes());
            String setting = switch (stage) {
                case PRINT -> STICKER;
                case LAMINATE -> FILM;
                case CUT -> settings;
                default -> "";
            };
            tasks.add(new Task(stage, setUp, work, byHand, rest, setting, Optional.empty(), Optional.empty()));
        }
        return tasks;
    }
}
