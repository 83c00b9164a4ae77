package puzzleworkshop.measure;

import java.time.Duration;

/**
 * Working time in minutes, fractions allowed; finite and not negative.
 *
 * @param value minutes
 */
public record Minutes(double value) implements Comparable<Minutes> {

    public static final Minutes ZERO = new Minutes(0);

    public Minutes {
        if (!Double.isFinite(value) || value < 0) {
            throw new IllegalArgumentException("A working time must be zero or more minutes, not " + value);
        }
    }

    public static Minutes of(double minutes) {
        return new Minutes(minutes);
    }

    public static Minutes ofSeconds(double seconds) {
        return new Minutes(seconds / 60);
    }

    public static Minutes of(Duration duration) {
        return new Minutes(duration.toMillis() / 60_000.0);
    }

    public Minutes plus(Minutes other) {
        return new Minutes(value + other.value);
    }

    public Minutes times(double factor) {
        return new Minutes(value * factor);
    }

    public double toHours() {
        return value / 60;
    }

    public double toSeconds() {
        return value * 60;
    }

    @Override
    public int compareTo(Minutes other) {
        return Double.compare(value, other.value);
    }
}
