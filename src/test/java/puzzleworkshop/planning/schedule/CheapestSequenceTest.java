package puzzleworkshop.planning.schedule;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.planning.calendar.FreeDays;
import puzzleworkshop.planning.calendar.OpenHours;
import puzzleworkshop.planning.calendar.OpenHours.Span;
import puzzleworkshop.planning.calendar.Worker;
import puzzleworkshop.planning.calendar.WorkingCalendar;
import puzzleworkshop.workshop.Stage;

/** The search against judges that share no code with it. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CheapestSequenceTest {

    private static final LocalDateTime START =
            WorkshopWeeks.MONDAY.toLocalDate().atStartOfDay();
    private static final LatenessCost COST = LatenessCost.USUAL;

    @Test
    void lateness_costs_by_the_day_and_by_its_square() {
        assertThat(COST.of(0)).isZero();
        assertThat(COST.of(-3)).isZero();
        assertThat(COST.of(1)).isEqualTo(1 + 2 + 1);
        assertThat(COST.of(10)).isEqualTo(1 + 20 + 100);
        assertThat(COST.weight(true, true)).isEqualTo(3);
        assertThatThrownBy(() -> new LatenessCost(1, 2, 0, 2, 2)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new LatenessCost(1, 2, 1, 0.5, 2)).isInstanceOf(IllegalArgumentException.class);
    }

    /**
     * One machine that never rests: the cost of a job depends only on which jobs come before it, so the best is found
     * exactly over subsets (Held and Karp, A Dynamic Programming Approach to Sequencing Problems, 1962).
     */
    @Test
    void on_one_machine_it_finds_what_dynamic_programming_over_subsets_finds() {
        OpenHours always = new OpenHours(Arrays.stream(DayOfWeek.values())
                .collect(Collectors.toMap(d -> d, d -> List.of(new Span(0, 1440)))));
        WorkingCalendar calendar = new WorkingCalendar(
                List.of(Worker.of("Mila", always)), always, OpenHours.NONE, FreeDays.NONE, List.of());
        // All is done within one day, so a day of lateness must count for more than usual.
        LatenessCost steep = new LatenessCost(1, 100, 1000, 2, 1.5);
        Random random = new Random(1962);
        int optimal = 0;
        int cases = 0;
        for (int round = 0; round < 300; round++) {
            int n = 5 + random.nextInt(8);
            int[] time = new int[n];
            int[] due = new int[n];
            double[] weight = new double[n];
            List<Job> jobs = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                time[i] = 1 + random.nextInt(60);
                due[i] = random.nextInt(n * 30);
                weight[i] = new double[] {1, 1, 1.5, 2, 3}[random.nextInt(5)];
                jobs.add(Job.of(i, START.plusMinutes(due[i]), List.of(Task.byHand(Stage.STICK, 0, time[i], 0)))
                        .weighing(weight[i]));
            }
            double best = overSubsets(time, due, weight);
            double ours = Scheduler.usual(0, steep).plan(calendar, jobs, START).cost();
            assertThat(ours).as("round " + round).isGreaterThanOrEqualTo(best - 1e-6);
            if (n <= 9) {
                cases++;
                optimal += ours <= best + 1e-6 ? 1 : 0;
            }
            assertThat(ours).as("round %d, %d jobs", round, n).isLessThanOrEqualTo(best * 1.02 + 1e-6);
        }
        assertThat(optimal).isGreaterThanOrEqualTo((int) Math.ceil(0.995 * cases));
    }

    private static double overSubsets(int[] time, int[] due, double[] weight) {
        int n = time.length;
        double[] least = new double[1 << n];
        Arrays.fill(least, 1, least.length, Double.MAX_VALUE);
        for (int set = 1; set < least.length; set++) {
            int end = 0;
            for (int j = 0; j < n; j++) {
                end += (set >> j & 1) * time[j];
            }
            for (int last = 0; last < n; last++) {
                if ((set >> last & 1) == 1) {
                    double days = (end - due[last]) / 1440.0;
                    double cost = days <= 0 ? 0 : weight[last] * (1 + 100 * days + 1000 * days * days);
                    least[set] = Math.min(least[set], least[set & ~(1 << last)] + cost);
                }
            }
        }
        return least[least.length - 1];
    }

    /** All sequences, laid by hand into a row of minutes: work is done in one piece, 8 to 12 and 13 to 17 on weekdays. */
    @Test
    void with_breaks_nights_and_weekends_it_finds_what_trying_all_sequences_finds() {
        Random random = new Random(26);
        int optimal = 0;
        int cases = 150;
        for (int round = 0; round < cases; round++) {
            int n = 5 + random.nextInt(3);
            int[] time = new int[n];
            int[] due = new int[n];
            List<Job> jobs = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                time[i] = 30 * (1 + random.nextInt(8));
                due[i] = 1440 * random.nextInt(6) + 480 + random.nextInt(540);
                jobs.add(Job.of(i, START.plusMinutes(due[i]), List.of(Task.byHand(Stage.STICK, 0, time[i], 0))));
            }
            double best = overSequences(time, due, new int[n], new boolean[n], 0);
            double ours = Scheduler.usual()
                    .plan(PromisesKeptTest.oneMaker(), jobs, START)
                    .cost();
            assertThat(ours).as("round " + round).isGreaterThanOrEqualTo(best - 1e-6);
            assertThat(ours).as("round " + round).isCloseTo(best, within(0.1 * best + 1e-6));
            optimal += ours <= best + 1e-6 ? 1 : 0;
        }
        assertThat(optimal).isGreaterThanOrEqualTo((int) Math.ceil(0.995 * cases));
    }

    private static double overSequences(int[] time, int[] due, int[] sequence, boolean[] used, int placed) {
        if (placed == time.length) {
            return laid(time, due, sequence);
        }
        double least = Double.MAX_VALUE;
        for (int j = 0; j < time.length; j++) {
            if (!used[j]) {
                used[j] = true;
                sequence[placed] = j;
                least = Math.min(least, overSequences(time, due, sequence, used, placed + 1));
                used[j] = false;
            }
        }
        return least;
    }

    private static double laid(int[] time, int[] due, int[] sequence) {
        boolean[] taken = new boolean[14 * 48];
        double cost = 0;
        for (int j : sequence) {
            int from = 0;
            while (!isFree(taken, from, time[j] / 30)) {
                from++;
            }
            Arrays.fill(taken, from, from + time[j] / 30, true);
            int end = 30 * from + time[j];
            if (end > due[j]) {
                int late = 0;
                for (int minute = due[j]; minute < end; minute++) {
                    late += isOpen(minute) ? 1 : 0;
                }
                double days = late / 480.0;
                cost += 1 + 2 * days + days * days;
            }
        }
        return cost;
    }

    /** In steps of half an hour. */
    private static boolean isFree(boolean[] taken, int from, int length) {
        for (int i = from; i < from + length; i++) {
            if (taken[i] || !isOpen(30 * i)) {
                return false;
            }
        }
        return true;
    }

    private static boolean isOpen(int minute) {
        int ofDay = minute % 1440;
        return minute / 1440 % 7 < 5 && (ofDay >= 480 && ofDay < 720 || ofDay >= 780 && ofDay < 1020);
    }
}
