package puzzleworkshop.runtime;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;

/**
 * The computer's clock, except for work that is told to happen at another moment: the demo workshop's past year is done by
 * the same commands as any other work, each at its own time. Only the thread that tells it sees that moment.
 */
public final class HouseClock extends Clock {

    private static final ThreadLocal<Instant> TOLD = new ThreadLocal<>();

    private final Clock machine;

    private HouseClock(Clock machine) {
        this.machine = machine;
    }

    public static HouseClock ofThisComputer() {
        return new HouseClock(Clock.systemDefaultZone());
    }

    /** Does the work as if it were that moment. */
    public static void at(Instant moment, Runnable work) {
        Instant before = TOLD.get();
        TOLD.set(moment);
        try {
            work.run();
        } finally {
            if (before == null) {
                TOLD.remove();
            } else {
                TOLD.set(before);
            }
        }
    }

    /** The moment that this thread was told, if it was. */
    public static Optional<Instant> told() {
        return Optional.ofNullable(TOLD.get());
    }

    @Override
    public ZoneId getZone() {
        return machine.getZone();
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return new HouseClock(machine.withZone(zone));
    }

    @Override
    public Instant instant() {
        return told().orElseGet(machine::instant);
    }
}
