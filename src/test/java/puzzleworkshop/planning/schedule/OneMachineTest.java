package puzzleworkshop.planning.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.planning.schedule.OneMachine.Work;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class OneMachineTest {

    private static List<Work> works(int[] times, int[] dues) {
        return IntStream.range(0, times.length)
                .mapToObj(i -> new Work(i + 1, times[i], dues[i]))
                .toList();
    }

    private static List<Long> ids(List<Work> works) {
        return works.stream().map(Work::id).toList();
    }

    /** Ten jobs from a published exercise; the method is Moore's (Management Science 15(1), 1968). */
    private static final List<Work> TEN = works(
            new int[] {19, 23, 5, 31, 17, 8, 32, 41, 26, 18}, new int[] {48, 75, 170, 215, 205, 240, 85, 67, 100, 95});

    @Test
    void of_the_ten_published_jobs_two_are_late_the_8th_and_the_7th() {
        OneMachine.Split split = OneMachine.fewestLate(TEN);
        assertThat(ids(split.late())).containsExactlyInAnyOrder(8L, 7L);
        assertThat(OneMachine.lateIn(split.sequence())).isEqualTo(2);
    }

    /** Jackson 1955: the earliest due date sequence has the smallest maximum lateness, here 59 for the 9th job. */
    @Test
    void the_ten_published_jobs_by_due_date_are_59_late_at_most() {
        assertThat(OneMachine.maximumLateness(OneMachine.earliestDueFirst(TEN))).isEqualTo(59);
    }

    /** Pinedo, Scheduling, ch. 3: p 7,8,4,6,6; d 9,17,18,19,21. */
    @Test
    void the_textbook_five_keep_3_4_5_and_leave_1_and_2_late() {
        List<Work> five = works(new int[] {7, 8, 4, 6, 6}, new int[] {9, 17, 18, 19, 21});
        OneMachine.Split split = OneMachine.fewestLate(five);
        assertThat(ids(split.sequence())).containsExactly(3L, 4L, 5L, 1L, 2L);
        assertThat(split.late()).hasSize(2);
        assertThat(OneMachine.maximumLateness(OneMachine.earliestDueFirst(five)))
                .isEqualTo(10);
    }

    /** A textbook exercise, checked by trying all sequences. */
    @Test
    void six_jobs_by_due_date_are_one_late_at_most() {
        List<Work> six = works(new int[] {3, 2, 1, 4, 3, 2}, new int[] {6, 8, 9, 9, 14, 15});
        assertThat(OneMachine.maximumLateness(OneMachine.earliestDueFirst(six))).isEqualTo(1);
    }

    @Test
    void no_jobs_are_never_late() {
        assertThat(OneMachine.fewestLate(List.of()).sequence()).isEmpty();
        assertThat(OneMachine.maximumLateness(List.of())).isZero();
    }

    /** The judge tries every sequence, leaving out only what can no longer be better. */
    @Test
    void in_10_000_random_cases_no_sequence_is_better() {
        long seed = Seeds.from(20261125);
        Random random = new Random(seed);
        for (int round = 0; round < 10_000; round++) {
            int n = round < 200 ? 8 : 1 + random.nextInt(7);
            List<Work> works = new ArrayList<>();
            for (int i = 0; i < n; i++) {
                works.add(new Work(i, random.nextInt(20), random.nextInt(n * 11) - 3));
            }
            int[] fewest = {n + 1};
            long[] smallest = {Long.MAX_VALUE};
            judge(works, new boolean[n], 0, 0, 0, Long.MIN_VALUE, fewest, smallest);
            String which = "seed " + seed + ", round " + round + ": " + works;
            assertThat(OneMachine.lateIn(OneMachine.fewestLate(works).sequence()))
                    .as(which)
                    .isEqualTo(fewest[0]);
            assertThat(OneMachine.fewestLate(works).late()).as(which).hasSize(fewest[0]);
            assertThat(OneMachine.maximumLateness(OneMachine.earliestDueFirst(works)))
                    .as(which)
                    .isEqualTo(smallest[0]);
        }
    }

    private static void judge(
            List<Work> works,
            boolean[] done,
            int count,
            long end,
            int late,
            long worst,
            int[] fewest,
            long[] smallest) {
        if (late >= fewest[0] && worst >= smallest[0]) {
            return;
        }
        if (count == works.size()) {
            fewest[0] = Math.min(fewest[0], late);
            smallest[0] = Math.min(smallest[0], worst);
            return;
        }
        for (int i = 0; i < works.size(); i++) {
            if (!done[i]) {
                done[i] = true;
                Work work = works.get(i);
                long then = end + work.time();
                judge(
                        works,
                        done,
                        count + 1,
                        then,
                        late + (then > work.due() ? 1 : 0),
                        Math.max(worst, then - work.due()),
                        fewest,
                        smallest);
                done[i] = false;
            }
        }
    }
}
