package puzzleworkshop.runtime;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.support.TransactionTemplate;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class AfterCommitIT {

    @Autowired
    AfterCommit afterCommit;

    @Autowired
    Broadcaster broadcaster;

    @Autowired
    TransactionTemplate transaction;

    private record Counted(int what) implements Change {}

    private record Call(Set<Change> changes, Thread by, long at) {}

    private final BlockingQueue<Call> calls = new LinkedBlockingQueue<>();

    private Broadcaster.Listening listen() {
        return broadcaster.listen(
                Counted.class::isInstance,
                changes -> calls.add(new Call(changes, Thread.currentThread(), System.nanoTime())));
    }

    @Test
    void ten_changes_within_a_second_reach_a_screen_once_and_never_in_the_thread_that_made_them() throws Exception {
        Broadcaster.Listening screen = listen();
        long began = System.nanoTime();
        for (int i = 0; i < 10; i++) {
            int change = i;
            transaction.executeWithoutResult(status -> afterCommit.tell(new Counted(change)));
            Thread.sleep(60);
        }
        Call call = calls.poll(3, TimeUnit.SECONDS);
        assertThat(call).as("the screen was told").isNotNull();
        assertThat(call.changes()).hasSize(10);
        assertThat(call.by()).isNotSameAs(Thread.currentThread());
        assertThat(TimeUnit.NANOSECONDS.toMillis(call.at() - began)).isLessThan(2000);
        assertThat(calls.poll(600, TimeUnit.MILLISECONDS)).as("told twice").isNull();
        screen.stop();
    }

    @Test
    void a_screen_is_told_within_about_a_second_though_changes_never_cease() throws Exception {
        Broadcaster.Listening screen = listen();
        long began = System.nanoTime();
        while (calls.isEmpty() && System.nanoTime() - began < TimeUnit.SECONDS.toNanos(5)) {
            afterCommit.tell(new Counted(1));
            Thread.sleep(50);
        }
        screen.stop();
        assertThat(TimeUnit.NANOSECONDS.toMillis(calls.element().at() - began)).isBetween(900L, 2500L);
    }

    @Test
    void a_screen_that_was_shown_meanwhile_is_not_told_again_what_it_has_shown() throws Exception {
        Broadcaster.Listening screen = listen();
        afterCommit.tell(new Counted(1));
        screen.seen();
        assertThat(calls.poll(600, TimeUnit.MILLISECONDS)).isNull();
        afterCommit.tell(new Counted(2));
        assertThat(calls.poll(3, TimeUnit.SECONDS).changes()).containsExactly(new Counted(2));
        screen.stop();
    }

    @Test
    void each_change_of_a_transaction_is_told_once_and_of_one_that_was_rolled_back_none() throws Exception {
        Broadcaster.Listening screen = listen();
        assertThatThrownBy(() -> transaction.executeWithoutResult(status -> {
                    afterCommit.tell(new Counted(99));
                    throw new IllegalStateException("no");
                }))
                .hasMessage("no");
        transaction.executeWithoutResult(
                status -> List.of(1, 1, 2, 1).forEach(what -> afterCommit.tell(new Counted(what))));
        assertThat(calls.poll(3, TimeUnit.SECONDS).changes()).containsExactly(new Counted(1), new Counted(2));
        screen.stop();
        transaction.executeWithoutResult(status -> afterCommit.tell(new Counted(3)));
        assertThat(calls.poll(600, TimeUnit.MILLISECONDS))
                .as("told after it had stopped listening")
                .isNull();
    }

    @Test
    void a_transaction_sees_its_own_changes_and_leaves_no_trace_of_them_in_memory() {
        VersionedCache<String, Integer> cache = VersionedCache.ofMost(5);
        assertThat(cache.get("count", () -> 1)).isEqualTo(1);
        transaction.executeWithoutResult(status -> {
            assertThat(cache.get("count", () -> 2))
                    .as("before it has changed anything")
                    .isEqualTo(1);
            afterCommit.tell(new Counted(1));
            assertThat(cache.get("count", () -> 2))
                    .as("with a change of its own")
                    .isEqualTo(2);
            status.setRollbackOnly();
        });
        assertThat(cache.get("count", () -> 3)).as("after it was rolled back").isEqualTo(1);
    }
}
