package puzzleworkshop.runtime;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Map;

/**
 * Lets so many through in a span of time, for each key by itself. Kept in memory; the number of keys is bounded
 * ({@link RecentKeys}).
 */
public final class RateLimiter {

    private static final int MOST_KEYS = 20_000;

    private final int most;
    private final Duration span;
    private final Clock clock;
    private final Map<String, ArrayDeque<Instant>> passed = new RecentKeys<>(MOST_KEYS);

    public RateLimiter(int most, Duration span, Clock clock) {
        this.most = most;
        this.span = span;
        this.clock = clock;
    }

    /** Counts one when there is room for it, else says no. */
    public synchronized boolean pass(String key) {
        ArrayDeque<Instant> times = recent(key);
        if (times.size() >= most) {
            return false;
        }
        times.addLast(clock.instant());
        return true;
    }

    /** Whether the next one would be let through; counts nothing. */
    public synchronized boolean isOpen(String key) {
        return recent(key).size() < most;
    }

    private ArrayDeque<Instant> recent(String key) {
        ArrayDeque<Instant> times = passed.computeIfAbsent(key, k -> new ArrayDeque<>());
        Instant since = clock.instant().minus(span);
        while (!times.isEmpty() && !times.getFirst().isAfter(since)) {
            times.removeFirst();
        }
        return times;
    }
}
