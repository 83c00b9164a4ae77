package puzzleworkshop.runtime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(ReplaceUnderscores.class)
class VersionedCacheTest {

    private final AtomicInteger made = new AtomicInteger();

    @Test
    void an_answer_is_worked_out_once_however_many_ask_at_the_same_time() throws Exception {
        VersionedCache<String, byte[]> cache = VersionedCache.ofWeight(1 << 20, answer -> answer.length);
        CountDownLatch all = new CountDownLatch(8);
        List<Future<byte[]>> asked = new ArrayList<>();
        try (ExecutorService people = Executors.newFixedThreadPool(8)) {
            for (int i = 0; i < 8; i++) {
                asked.add(people.submit(() -> {
                    all.countDown();
                    all.await();
                    return cache.get("face", () -> bytes(1000));
                }));
            }
        }
        for (Future<byte[]> answer : asked) {
            assertThat(answer.get()).isSameAs(asked.getFirst().get());
        }
        assertThat(made).hasValue(1);
        cache.get("another", () -> bytes(10));
        assertThat(made).hasValue(2);
    }

    @Test
    void what_was_kept_never_weighs_more_than_it_may() {
        VersionedCache<Integer, byte[]> cache = VersionedCache.ofWeight(16 << 10, answer -> answer.length);
        for (int i = 0; i < 100; i++) {
            cache.get(i, () -> bytes(1 << 10));
        }
        int before = made.get();
        for (int i = 0; i < 100; i++) {
            cache.get(i, () -> bytes(1 << 10));
        }
        assertThat(made.get() - before)
                .as("of 100 answers of 1 kB at most 16 are kept in 16 kB")
                .isGreaterThanOrEqualTo(84);
    }

    @Test
    void a_failure_reaches_those_who_wait_for_it_and_is_not_kept() {
        VersionedCache<String, byte[]> cache = VersionedCache.ofMost(10);
        assertThatThrownBy(() -> cache.get("face", () -> {
                    throw new IllegalStateException("no picture");
                }))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("no picture");
        assertThat(cache.get("face", () -> bytes(3))).hasSize(3);
    }

    @Test
    void an_answer_ends_by_the_clock() {
        Instant[] now = {Instant.parse("2026-11-29T10:00:00Z")};
        Clock clock = new Clock() {
            @Override
            public ZoneOffset getZone() {
                return ZoneOffset.UTC;
            }

            @Override
            public Clock withZone(java.time.ZoneId zone) {
                return this;
            }

            @Override
            public Instant instant() {
                return now[0];
            }
        };
        VersionedCache<String, byte[]> cache = VersionedCache.ofMost(10, Duration.ofMinutes(5), clock);
        cache.get("plan", () -> bytes(1));
        now[0] = now[0].plusSeconds(299);
        cache.get("plan", () -> bytes(1));
        assertThat(made).hasValue(1);
        now[0] = now[0].plusSeconds(2);
        cache.get("plan", () -> bytes(1));
        assertThat(made).hasValue(2);
    }

    @Test
    void what_changes_while_it_is_worked_out_is_never_given_to_somebody_who_asks_later() throws Exception {
        long seed = Seeds.from(20261129);
        Random random = new Random(seed);
        VersionedCache<String, Integer> cache = VersionedCache.ofMost(10);
        AtomicInteger truth = new AtomicInteger();
        try (ExecutorService reader = Executors.newSingleThreadExecutor()) {
            for (int round = 1; round <= 200; round++) {
                CountDownLatch begun = new CountDownLatch(1);
                int pause = random.nextInt(4);
                cache.forget();
                Future<?> early = reader.submit(() -> cache.get("count", () -> {
                    int seen = truth.get();
                    begun.countDown();
                    sleep(pause);
                    return seen;
                }));
                assertThat(begun.await(10, TimeUnit.SECONDS))
                        .as("whoever asks after a change works it out")
                        .isTrue();
                if (pause > 0) {
                    sleep(random.nextInt(pause));
                }
                truth.set(round);
                cache.forget();
                assertThat(cache.get("count", truth::get))
                        .as("round %d of seed %d", round, seed)
                        .isEqualTo(round);
                early.get();
                assertThat(cache.get("count", truth::get))
                        .as("after the late one has finished, round %d of seed %d", round, seed)
                        .isEqualTo(round);
            }
        }
    }

    @Test
    void of_many_only_those_missing_are_worked_out() {
        VersionedCache<Integer, String> cache = VersionedCache.ofMost(10);
        List<Integer> asked = new ArrayList<>();
        assertThat(cache.getAll(List.of(1, 2), which -> squares(which, asked))).containsEntry(2, "4");
        assertThat(cache.getAll(List.of(1, 2, 3), which -> squares(which, asked)))
                .containsExactlyInAnyOrderEntriesOf(Map.of(1, "1", 2, "4", 3, "9"));
        assertThat(asked).containsExactly(1, 2, 3);
        VersionedCache.forgetEverything();
        cache.getAll(List.of(1), which -> squares(which, asked));
        assertThat(asked).containsExactly(1, 2, 3, 1);
    }

    private record MachineChanged() implements Change {}

    private record OrderTaken() implements Change {}

    @Test
    void a_transaction_works_out_for_itself_only_what_rests_on_what_it_has_changed() {
        VersionedCache<String, byte[]> machines =
                VersionedCache.<String, byte[]>ofMost(10).restingOn(MachineChanged.class);
        VersionedCache<String, byte[]> patterns =
                VersionedCache.<String, byte[]>ofMost(10).restingOnTheQuestion();
        VersionedCache<String, byte[]> anything = VersionedCache.ofMost(10);
        List<VersionedCache<String, byte[]>> all = List.of(machines, patterns, anything);
        all.forEach(cache -> cache.get("one", () -> bytes(1)));
        AfterCommit afterCommit = new AfterCommit(told -> {});
        TransactionSynchronizationManager.initSynchronization();
        try {
            assertThat(workedOutAgain(all)).containsExactly(false, false, false);
            afterCommit.tell(new OrderTaken());
            assertThat(workedOutAgain(all)).containsExactly(false, false, true);
            afterCommit.tell(new MachineChanged());
            assertThat(workedOutAgain(all)).containsExactly(true, false, true);
            machines.getAll(List.of("one"), which -> Map.of("one", bytes(2)));
        } finally {
            TransactionSynchronizationManager.clearSynchronization();
        }
        assertThat(machines.get("one", () -> bytes(3)))
                .as("what the transaction saw is not kept for others")
                .hasSize(1);
    }

    private List<Boolean> workedOutAgain(List<VersionedCache<String, byte[]>> caches) {
        return caches.stream()
                .map(cache -> {
                    int before = made.get();
                    cache.get("one", () -> bytes(1));
                    return made.get() > before;
                })
                .toList();
    }

    private static Map<Integer, String> squares(Collection<Integer> which, List<Integer> asked) {
        Map<Integer, String> squares = new HashMap<>();
        which.forEach(i -> squares.put(i, String.valueOf(i * i)));
        asked.addAll(which);
        return squares;
    }

    private byte[] bytes(int many) {
        made.incrementAndGet();
        return new byte[many];
    }

    private static void sleep(int millis) {
        try {
            Thread.sleep(millis);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
