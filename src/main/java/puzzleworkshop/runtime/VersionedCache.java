package puzzleworkshop.runtime;

import com.github.benmanes.caffeine.cache.AsyncCache;
import com.github.benmanes.caffeine.cache.Caffeine;
import java.time.Clock;
import java.time.Duration;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.Supplier;
import java.util.function.ToIntFunction;

/**
 * Answers kept in memory until what they rest on changes. The one way in which rooms keep what costs time to work out:
 *
 * <ul>
 *   <li>single flight: of many who ask for the same answer at once one works it out, the others wait for it;
 *   <li>versioned: after {@link #forget} nobody is given an answer whose making began before it, however late it is
 *       finished;
 *   <li>bounded: by number or by weight, those not asked for longest go first (Caffeine);
 *   <li>own changes are seen: within a transaction that has changed what the answers rest on ({@link AfterCommit}) an
 *       answer is worked out for that transaction alone, neither taken from here nor kept. Without {@link #restingOn} any
 *       change counts.
 * </ul>
 *
 * @param <K> what is asked, with a proper {@code equals}
 * @param <V> the answer, immutable, never null
 */
public final class VersionedCache<K, V> {

    /** Counts how often the whole database was exchanged below the running program. */
    private static final AtomicLong WORLD = new AtomicLong();

    private record Asked<K>(long world, long version, K question) {}

    private final AtomicLong version = new AtomicLong();
    private final AsyncCache<Asked<K>, V> answers;
    private final Predicate<Change> matters;

    private VersionedCache(AsyncCache<Asked<K>, V> answers) {
        this(answers, change -> true);
    }

    private VersionedCache(AsyncCache<Asked<K>, V> answers, Predicate<Change> matters) {
        this.answers = answers;
        this.matters = matters;
    }

    /** Keeps at most so many answers. */
    public static <K, V> VersionedCache<K, V> ofMost(long answers) {
        return new VersionedCache<>(here().maximumSize(answers).buildAsync());
    }

    /** Keeps at most so many answers, each for at most so long by the clock. */
    public static <K, V> VersionedCache<K, V> ofMost(long answers, Duration kept, Clock clock) {
        return new VersionedCache<>(here().maximumSize(answers)
                .expireAfterWrite(kept)
                .ticker(() -> Duration.ofMillis(clock.millis()).toNanos())
                .buildAsync());
    }

    /** Keeps answers that together weigh at most so much. */
    public static <K, V> VersionedCache<K, V> ofWeight(long most, ToIntFunction<V> weight) {
        return new VersionedCache<>(here().maximumWeight(most)
                .weigher((Asked<K> asked, V answer) -> weight.applyAsInt(answer))
                .buildAsync());
    }

    /**
     * The same, where the answers rest on nothing but one kind of change, after which {@link #forget} is called: a transaction
     * that has changed other things takes them from here as well. A booking asks for machines, rules and rates many times
     * after its first change.
     */
    public VersionedCache<K, V> restingOn(Class<? extends Change> change) {
        return new VersionedCache<>(answers, change::isInstance);
    }

    /** The same, where the question says all that an answer depends on: no change alters it. */
    public VersionedCache<K, V> restingOnTheQuestion() {
        return new VersionedCache<>(answers, change -> false);
    }

    /** Room is made in the caller's thread: no pool of threads is needed for so little. */
    private static Caffeine<Object, Object> here() {
        return Caffeine.newBuilder().executor(Runnable::run);
    }

    /** The answer, taken from memory or worked out now; a failure is thrown to all who wait for it and not kept. */
    public V get(K question, Supplier<V> work) {
        if (AfterCommit.isWaiting(matters)) {
            return work.get();
        }
        CompletableFuture<V> mine = new CompletableFuture<>();
        CompletableFuture<V> known = answers.asMap().putIfAbsent(asked(question), mine);
        return known == null ? workOut(mine, work) : await(known);
    }

    /**
     * Many answers; those missing are worked out together. Two who ask at once may both work some out.
     *
     * @param work answers for the questions it is given; what it leaves out has no answer
     */
    public Map<K, V> getAll(Collection<K> questions, Function<Collection<K>, Map<K, V>> work) {
        if (AfterCommit.isWaiting(matters)) {
            return work.apply(questions);
        }
        Map<Asked<K>, K> asked = new LinkedHashMap<>();
        questions.forEach(question -> asked.put(asked(question), question));
        Map<K, V> found = new HashMap<>();
        answers.synchronous().getAllPresent(asked.keySet()).forEach((at, answer) -> found.put(at.question(), answer));
        asked.values().removeAll(found.keySet());
        if (!asked.isEmpty()) {
            Map<K, V> fresh = work.apply(asked.values());
            asked.forEach((at, question) -> {
                V answer = fresh.get(question);
                if (answer != null) {
                    answers.put(at, CompletableFuture.completedFuture(answer));
                    found.put(question, answer);
                }
            });
        }
        return found;
    }

    /** What the answers rest on has changed. An answer that is being worked out reaches those who asked before, nobody after. */
    public void forget() {
        version.incrementAndGet();
        answers.asMap().clear();
    }

    /** Another database was put in place of the one there was: no answer of any cache counts any more. */
    public static void forgetEverything() {
        WORLD.incrementAndGet();
    }

    private Asked<K> asked(K question) {
        return new Asked<>(WORLD.get(), version.get(), question);
    }

    private V workOut(CompletableFuture<V> mine, Supplier<V> work) {
        try {
            V answer = work.get();
            mine.complete(answer);
            return answer;
        } catch (RuntimeException | Error failed) {
            mine.completeExceptionally(failed);
            throw failed;
        }
    }

    private static <V> V await(CompletableFuture<V> known) {
        try {
            return known.join();
        } catch (CompletionException failed) {
            if (failed.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            if (failed.getCause() instanceof Error error) {
                throw error;
            }
            throw failed;
        }
    }
}
