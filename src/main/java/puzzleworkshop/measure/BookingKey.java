package puzzleworkshop.measure;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * Names one intention to book, so that it is booked once however often it arrives: pressed twice, sent again after a lost
 * answer, or open in two windows. It is made when the form opens, not when it is sent.
 *
 * @param value at most 200 characters, unique for the intention
 */
public record BookingKey(String value) {

    private static final int MOST = 200;

    public BookingKey {
        if (value.isBlank() || value.length() > MOST) {
            throw new IllegalArgumentException("A booking key has 1 to " + MOST + " characters, not: " + value);
        }
    }

    /** For a form that may rightly be sent with the same content twice, such as a new quote. */
    public static BookingKey fresh() {
        return new BookingKey(UUID.randomUUID().toString());
    }

    /**
     * For a form that answers to something as it stood when the form opened: two windows that saw the same thing have the
     * same key. What was seen must have changed once the booking is made (a version, a count of lines that only grows), or
     * the next booking would be taken for this one.
     */
    public static BookingKey seen(String form, Object... seen) {
        return new BookingKey(form + Arrays.stream(seen).map(part -> "/" + part).collect(Collectors.joining()));
    }

    /** For one of several bookings that together are one. */
    public BookingKey part(Object which) {
        String whole = value + "#" + which;
        return new BookingKey(
                whole.length() <= MOST
                        ? whole
                        : UUID.nameUUIDFromBytes(whole.getBytes(StandardCharsets.UTF_8))
                                .toString());
    }
}
