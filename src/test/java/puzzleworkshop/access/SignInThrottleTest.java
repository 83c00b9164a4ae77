package puzzleworkshop.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class SignInThrottleTest {

    private final TurnedByHand clock = new TurnedByHand();
    private final SignInThrottle throttle = new SignInThrottle(clock);

    @Test
    void three_wrong_tries_cost_nothing() {
        wrong(3);
        assertThat(throttle.waitFor("Robin", "10.0.0.5")).isZero();
    }

    @Test
    void then_the_wait_doubles_with_every_wrong_try_up_to_fifteen_minutes() {
        wrong(3);
        List<Long> waits = new ArrayList<>();
        for (int i = 0; i < 11; i++) {
            wrong(1);
            waits.add(throttle.waitFor("Robin", "10.0.0.5").toSeconds());
        }
        assertThat(waits).containsExactly(2L, 4L, 8L, 16L, 32L, 64L, 128L, 256L, 512L, 900L, 900L);
    }

    @Test
    void the_wait_runs_down_with_the_clock() {
        wrong(6);
        clock.forward(Duration.ofSeconds(5));
        assertThat(throttle.waitFor("Robin", "10.0.0.5")).isEqualTo(Duration.ofSeconds(3));
        clock.forward(Duration.ofSeconds(3));
        assertThat(throttle.waitFor("Robin", "10.0.0.5")).isZero();
    }

    @Test
    void capital_letters_and_blanks_around_the_name_do_not_start_a_new_count() {
        wrong(4);
        assertThat(throttle.waitFor(" ROBIN ", "10.0.0.5")).isPositive();
    }

    @Test
    void another_name_and_another_address_are_not_held_up() {
        wrong(8);
        assertThat(throttle.waitFor("Kim", "10.0.0.5")).isZero();
        assertThat(throttle.waitFor("Robin", "10.0.0.6")).isZero();
    }

    @Test
    void an_address_that_tries_many_names_waits_for_all_of_them() {
        for (int i = 0; i <= SignInThrottle.FREE_TRIES_OF_AN_ADDRESS; i++) {
            throttle.wrong("name " + i, "10.0.0.5");
        }
        assertThat(throttle.waitFor("Kim", "10.0.0.5")).isPositive();
        assertThat(throttle.waitFor("Kim", "10.0.0.6")).isZero();
    }

    @Test
    void the_right_password_clears_the_name() {
        wrong(5);
        throttle.right("Robin", "10.0.0.5");
        assertThat(throttle.waitFor("Robin", "10.0.0.5")).isZero();
    }

    @Test
    void an_hour_without_a_try_clears_everything() {
        wrong(30);
        clock.forward(Duration.ofMinutes(61));
        assertThat(throttle.waitFor("Robin", "10.0.0.5")).isZero();
        wrong(1);
        assertThat(throttle.waitFor("Robin", "10.0.0.5")).isZero();
    }

    /** Counted when they were wrong, 163 of 200 that came together were looked at. */
    @Test
    void of_two_hundred_tries_that_come_together_only_the_free_ones_and_one_more_are_looked_at() throws Exception {
        AtomicInteger lookedAt = new AtomicInteger();
        CountDownLatch together = new CountDownLatch(1);
        List<Thread> guessers = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            guessers.add(Thread.startVirtualThread(() -> {
                await(together);
                if (!throttle.begin("Robin", "10.0.0.5").isPositive()) {
                    lookedAt.incrementAndGet();
                }
            }));
        }
        together.countDown();
        for (Thread guesser : guessers) {
            guesser.join();
        }
        assertThat(lookedAt).hasValue(SignInThrottle.FREE_TRIES + 1);
    }

    @Test
    void who_is_right_every_time_never_waits() {
        for (int i = 0; i < 100; i++) {
            assertThat(throttle.begin("Robin", "10.0.0.5")).isZero();
            throttle.right("Robin", "10.0.0.5");
        }
    }

    @Test
    void a_try_that_was_not_looked_at_does_not_count() {
        for (int i = 0; i < 100; i++) {
            assertThat(throttle.begin("Robin", "10.0.0.5")).isZero();
            throttle.notLookedAt("Robin", "10.0.0.5");
        }
    }

    private static void await(CountDownLatch together) {
        try {
            together.await();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    private void wrong(int times) {
        for (int i = 0; i < times; i++) {
            throttle.wrong("Robin", "10.0.0.5");
        }
    }

    private static final class TurnedByHand extends Clock {

        private Instant now = Instant.parse("2026-11-25T08:00:00Z");

        void forward(Duration duration) {
            now = now.plus(duration);
        }

        @Override
        public Instant instant() {
            return now;
        }

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }
    }
}
