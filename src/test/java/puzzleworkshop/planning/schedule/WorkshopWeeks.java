package puzzleworkshop.planning.schedule;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.FreeDays;
import puzzleworkshop.planning.calendar.OpenHours;
import puzzleworkshop.planning.calendar.OpenHours.Span;
import puzzleworkshop.planning.calendar.Worker;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.workshop.Stage;

/** Workshops and weeks of our own making, for tests and the benchmark. */
public final class WorkshopWeeks {

    /** A Monday, 8 o'clock. */
    public static final LocalDateTime MONDAY = LocalDateTime.of(2026, 11, 30, 8, 0);

    public static final DeliveryWay PARCEL = new DeliveryWay(
            1,
            "parcel",
            EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY),
            LocalTime.of(16, 0),
            2,
            EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.SATURDAY));

    public static final DeliveryWay COLLECTION = new DeliveryWay(
            2,
            "collection",
            EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY),
            LocalTime.of(17, 0),
            0,
            EnumSet.allOf(DayOfWeek.class));

    private WorkshopWeeks() {}

    /** A maker and a helper; the laser runs from 9 to 13, as agreed with the neighbours. */
    public static WorkingCalendar twoPeople() {
        OpenHours full = OpenHours.weekdays(new Span(480, 720), new Span(780, 1020));
        OpenHours half = OpenHours.weekdays(new Span(540, 780));
        return new WorkingCalendar(
                List.of(
                        Worker.of("Mila", full),
                        new Worker(
                                "Jo",
                                half,
                                Set.of(),
                                EnumSet.of(Stage.MASK, Stage.FINISH, Stage.PACK, Stage.HAND_OVER))),
                OpenHours.weekdays(new Span(540, 780)),
                full,
                FreeDays.NONE,
                List.of());
    }

    /** All stages of an order that takes so long on the laser. */
    public static List<Task> whole(int cut, String board) {
        return List.of(
                Task.byMachine(Stage.PRINT, 5, 4, "matt paper"),
                new Task(Stage.LAMINATE, 5, 4, 9, 720, "clear film", Optional.empty(), Optional.empty()),
                Task.byHand(Stage.SHEET_PREP, 0, 6, 0),
                Task.byHand(Stage.STICK, 2, 6, 0),
                Task.byHand(Stage.MASK, 0, 4, 0),
                Task.byMachine(Stage.CUT, 8, cut, board),
                Task.byHand(Stage.FINISH, 0, 10, 0),
                Task.byHand(Stage.PACK, 0, 8, 0),
                Task.byHand(Stage.HAND_OVER, 0, 3, 0));
    }

    /** Orders of a busy time, at all stages, due within two weeks. */
    public static List<Job> random(int count, long seed) {
        Random random = new Random(seed);
        String[] boards = {"birch 3", "poplar 4", "mixed 3"};
        List<Job> jobs = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            List<Task> tasks = whole(15 + random.nextInt(35), boards[random.nextInt(boards.length)]);
            int from = random.nextInt(3) == 0 ? random.nextInt(tasks.size()) : 0;
            LocalDate due = MONDAY.toLocalDate().plusDays(1 + random.nextInt(18));
            while (due.getDayOfWeek().getValue() > 5) {
                due = due.minusDays(1);
            }
            jobs.add(Job.of(i + 1, due.atTime(16, 0), tasks.subList(from, tasks.size())));
        }
        return jobs;
    }

    /** Twelve orders at the sticking table, due by Thursday, that ask more of the laser than it may run until then. */
    public static List<Job> overloadedLaser() {
        List<Job> jobs = new ArrayList<>();
        int[] cuts = {95, 60, 110, 75, 70, 90, 85, 60, 80, 70, 65, 90};
        for (int i = 0; i < cuts.length; i++) {
            List<Task> tasks = whole(cuts[i], "birch 3");
            LocalDate due = MONDAY.toLocalDate().plusDays(i < 4 ? 1 : i < 8 ? 2 : 3);
            jobs.add(Job.of(101 + i, due.atTime(16, 0), tasks.subList(3, tasks.size())));
        }
        return jobs;
    }
}
