package puzzleworkshop.access;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Map;
import puzzleworkshop.runtime.RecentKeys;

/**
 * Slows down guessing. For one name from one address the first three wrong passwords cost nothing, then the wait doubles
 * from 2 seconds up to 15 minutes; for one address, whatever names it tries, it begins after twenty. A right
 * password clears the name; an hour without a try clears all. Kept in memory: a restart forgets it, and costs an attacker
 * more than it gives. The number of remembered keys is bounded ({@link RecentKeys}). Not a {@link
 * puzzleworkshop.runtime.RateLimiter}: that one lets so many through in a span, here the wait grows with each wrong one.
 */
class SignInThrottle {

    static final int FREE_TRIES = 3;
    static final int FREE_TRIES_OF_AN_ADDRESS = 20;
    static final Duration FIRST_WAIT = Duration.ofSeconds(2);
    static final Duration LONGEST_WAIT = Duration.ofMinutes(15);
    static final Duration FORGET_AFTER = Duration.ofHours(1);
    private static final int MOST_KEYS = 50_000;

    private final Clock clock;
    private final Map<String, Tries> tries = new RecentKeys<>(MOST_KEYS);

    private record Tries(int wrong, Instant last) {}

    SignInThrottle(Clock clock) {
        this.clock = clock;
    }

    /**
     * Lets one try begin, and counts it as a wrong one at once: of two hundred tries that come together, the ones behind
     * the free ones are not looked at. What turns out right or was not looked at is taken back.
     *
     * @return zero when the try may begin, else how long this name at this address has to wait before it may
     */
    synchronized Duration begin(String name, String address) {
        Duration wait = waitFor(name, address);
        if (!wait.isPositive()) {
            wrong(name, address);
        }
        return wait;
    }

    synchronized Duration waitFor(String name, String address) {
        Duration ofName = left(tries.get(both(name, address)), FREE_TRIES);
        Duration ofAddress = left(tries.get(address), FREE_TRIES_OF_AN_ADDRESS);
        return ofName.compareTo(ofAddress) >= 0 ? ofName : ofAddress;
    }

    synchronized void wrong(String name, String address) {
        count(both(name, address));
        count(address);
    }

    /** The try that began was right. */
    synchronized void right(String name, String address) {
        tries.remove(both(name, address));
        takeBack(address);
    }

    /** The try that began was not looked at. */
    synchronized void notLookedAt(String name, String address) {
        takeBack(both(name, address));
        takeBack(address);
    }

    private void takeBack(String key) {
        tries.computeIfPresent(key, (k, old) -> old.wrong <= 1 ? null : new Tries(old.wrong - 1, old.last));
    }

    private void count(String key) {
        Instant now = clock.instant();
        tries.merge(key, new Tries(1, now), (old, one) -> isForgotten(old, now) ? one : new Tries(old.wrong + 1, now));
    }

    private Duration left(Tries known, int free) {
        Instant now = clock.instant();
        if (known == null || known.wrong <= free || isForgotten(known, now)) {
            return Duration.ZERO;
        }
        int doublings = Math.min(known.wrong - free - 1, 20);
        Duration wait = FIRST_WAIT.multipliedBy(1L << doublings);
        if (wait.compareTo(LONGEST_WAIT) > 0) {
            wait = LONGEST_WAIT;
        }
        Duration left = Duration.between(now, known.last.plus(wait));
        return left.isNegative() ? Duration.ZERO : left;
    }

    private static boolean isForgotten(Tries known, Instant now) {
        return known.last.plus(FORGET_AFTER).isBefore(now);
    }

    /** The address first, and a sign no address holds: no name can be made up that is mistaken for another key. */
    private static String both(String name, String address) {
        return address + "|" + name.strip().toLowerCase(Locale.ROOT);
    }
}
