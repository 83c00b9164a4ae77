package puzzleworkshop.bookings;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.LongFunction;
import java.util.function.Supplier;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Refused;

/**
 * Runs a booking unless its key has run already. The key is written first, in the booking's own transaction: a second
 * sender waits at the unique key until the first has committed and then gets what the first made; where the first was
 * refused or failed, its key is gone with it and the second books.
 */
@Service
@Transactional(propagation = Propagation.MANDATORY)
public class Bookings {

    /** Columns hold so much of what was said; more than that never differs by accident. */
    private static final int MOST_SAID = 2000;

    private record Earlier(String said, Optional<Long> made) {}

    private final JdbcClient jdbc;

    Bookings(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * Books once.
     *
     * @param said the command and what it was told, in words; a repeat must say the same
     * @param number of what was made, kept with the key
     * @param found what an earlier run with this key made
     * @throws Refused when the key has booked something else already
     */
    public <T> T once(BookingKey key, String said, Supplier<T> book, Function<T, Long> number, LongFunction<T> found) {
        Optional<Earlier> earlier = begin(key, said);
        if (earlier.isPresent()) {
            return found.apply(earlier.get().made().orElseThrow());
        }
        T made = book.get();
        jdbc.sql("update booking set made = :made where key = :key")
                .param("made", number.apply(made))
                .param("key", key.value())
                .update();
        return made;
    }

    /** Books once what makes nothing that a caller asks for; true when this call did it, false when it had been done. */
    public boolean once(BookingKey key, String said, Runnable book) {
        if (begin(key, said).isPresent()) {
            return false;
        }
        book.run();
        return true;
    }

    private Optional<Earlier> begin(BookingKey key, String said) {
        String words = said.length() > MOST_SAID ? said.substring(0, MOST_SAID) : said;
        int first = jdbc.sql("insert into booking (key, said) values (:key, :said) on conflict (key) do nothing")
                .param("key", key.value())
                .param("said", words)
                .update();
        if (first == 1) {
            return Optional.empty();
        }
        Earlier earlier = jdbc.sql("select said, made from booking where key = :key")
                .param("key", key.value())
                .query((row, n) ->
                        new Earlier(row.getString("said"), Optional.ofNullable(row.getObject("made", Long.class))))
                .single();
        if (!earlier.said().equals(words)) {
            throw new Refused("bookings.other");
        }
        return Optional.of(earlier);
    }
}
