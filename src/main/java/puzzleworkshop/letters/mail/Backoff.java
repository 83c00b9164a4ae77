package puzzleworkshop.letters.mail;

import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * How long a letter waits after each try that was not taken: a hiccup is over in minutes, an outage in hours, and after
 * about two days somebody should look (common practice; RFC 5321, section 4.5.4.1, has relays go on for four to five).
 */
final class Backoff {

    private static final List<Duration> WAITS = List.of(
            Duration.ofMinutes(1),
            Duration.ofMinutes(5),
            Duration.ofMinutes(15),
            Duration.ofMinutes(30),
            Duration.ofHours(1),
            Duration.ofHours(2),
            Duration.ofHours(4),
            Duration.ofHours(8),
            Duration.ofHours(16),
            Duration.ofHours(16));

    private Backoff() {}

    /** @param tries made so far; empty when they are enough */
    static Optional<Duration> after(int tries) {
        return tries <= WAITS.size() ? Optional.of(WAITS.get(Math.max(1, tries) - 1)) : Optional.empty();
    }
}
