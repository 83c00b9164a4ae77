package puzzleworkshop.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

class WorkLimitTest {

    private static WorkLimit limit(long steps, Duration time) {
        return WorkLimit.of(steps, time, () -> new Refused("measure.test"));
    }

    @Test
    void takes_as_many_steps_as_it_was_given_and_not_one_more() {
        WorkLimit limit = limit(1000, Duration.ofMinutes(1));
        assertThatCode(() -> {
                    for (int i = 0; i < 999; i++) {
                        limit.step();
                    }
                    limit.steps(1);
                })
                .doesNotThrowAnyException();
        assertThat(limit.taken()).isEqualTo(1000);
        assertThatThrownBy(limit::step).isInstanceOf(Refused.class);
    }

    @Test
    void products_that_do_not_fit_a_number_are_too_much_not_little() {
        // 65,536 × 65,536 is 0 in an int; 2³² × 2³² is 0 in a long.
        assertThatThrownBy(() -> limit(1_000_000, Duration.ofMinutes(1)).steps(65_536, 65_536))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> limit(1_000_000, Duration.ofMinutes(1)).steps(1L << 32, 1L << 32))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> limit(1_000_000, Duration.ofMinutes(1)).steps(-3, 7))
                .isInstanceOf(Refused.class);
        assertThatCode(() -> limit(1_000_000, Duration.ofMinutes(1)).steps(1000, 1000))
                .doesNotThrowAnyException();
    }

    @Test
    void ends_an_endless_loop_by_time() {
        WorkLimit limit = limit(Long.MAX_VALUE, Duration.ofMillis(50));
        long start = System.nanoTime();
        assertThatThrownBy(() -> {
                    while (true) {
                        limit.step();
                    }
                })
                .isInstanceOf(Refused.class);
        assertThat(Duration.ofNanos(System.nanoTime() - start)).isLessThan(Duration.ofSeconds(2));
        assertThatThrownBy(limit::step).as("stays ended").isInstanceOf(Refused.class);
    }

    @Test
    void waiting_for_the_processor_is_not_counted_as_work_and_still_ends() throws Exception {
        WorkLimit limit = WorkLimit.ofWork(
                Long.MAX_VALUE, Duration.ofMillis(300), Duration.ofMillis(1500), () -> new Refused("measure.test"));
        Thread.sleep(500);
        assertThatCode(limit::look)
                .as("half a second, none of it on the processor")
                .doesNotThrowAnyException();
        Thread.sleep(1100);
        assertThatThrownBy(limit::look).as("however little was done").isInstanceOf(Refused.class);
    }

    @Test
    void work_is_ended_when_its_time_on_the_processor_is_used_up() {
        WorkLimit limit = WorkLimit.ofWork(
                Long.MAX_VALUE, Duration.ofMillis(100), Duration.ofMinutes(10), () -> new Refused("measure.test"));
        assertThatThrownBy(() -> {
                    while (true) {
                        limit.step();
                    }
                })
                .isInstanceOf(Refused.class);
    }

    @Test
    void of_a_virtual_thread_the_clock_counts() throws Exception {
        AtomicReference<Throwable> thrown = new AtomicReference<>();
        Thread.ofVirtual()
                .start(() -> {
                    WorkLimit limit = WorkLimit.ofWork(
                            Long.MAX_VALUE,
                            Duration.ofMillis(20),
                            Duration.ofMinutes(10),
                            () -> new Refused("measure.test"));
                    try {
                        Thread.sleep(100);
                        limit.look();
                    } catch (InterruptedException | Refused ended) {
                        thrown.set(ended);
                    }
                })
                .join();
        assertThat(thrown.get()).isInstanceOf(Refused.class);
    }

    @Test
    void ends_when_its_thread_is_interrupted() {
        WorkLimit limit = WorkLimit.none();
        Thread.currentThread().interrupt();
        try {
            assertThatThrownBy(limit::look).isInstanceOf(IllegalStateException.class);
        } finally {
            assertThat(Thread.interrupted()).isTrue();
        }
    }
}
