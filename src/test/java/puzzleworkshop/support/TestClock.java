package puzzleworkshop.support;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import puzzleworkshop.runtime.HouseClock;

/**
 * The clock of the one context that all tests on PostgreSQL share: the machine's, until a test sets it. It goes on from
 * where it was set, and is put right again after each test method ({@link CleanDatabase}).
 */
public final class TestClock extends Clock {

    private static volatile Duration ahead = Duration.ZERO;

    private final Clock machine;

    TestClock() {
        this(Clock.systemDefaultZone());
    }

    private TestClock(Clock machine) {
        this.machine = machine;
    }

    /** It is now this moment, for the whole program. */
    public static void set(Instant now) {
        ahead = Duration.between(Clock.systemUTC().instant(), now);
    }

    public static void reset() {
        ahead = Duration.ZERO;
    }

    @Override
    public ZoneId getZone() {
        return machine.getZone();
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return new TestClock(machine.withZone(zone));
    }

    @Override
    public Instant instant() {
        return HouseClock.told().orElseGet(() -> machine.instant().plus(ahead));
    }
}
