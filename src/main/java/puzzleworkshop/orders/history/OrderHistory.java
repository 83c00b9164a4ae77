package puzzleworkshop.orders.history;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Sentence;

/** What happened to an order: lines are added by every room that does something with it, and never changed. */
@Service
public class OrderHistory {

    /** Before a day as ISO 8601 writes it. */
    private static final String A_DAY = "day:";

    private final JdbcClient jdbc;
    private final Formatter figures;
    private final Clock clock;

    OrderHistory(JdbcClient jdbc, Formatter figures, Clock clock) {
        this.jdbc = jdbc;
        this.figures = figures;
        this.clock = clock;
    }

    /**
     * Within the caller's transaction. Amounts are stored as they are shown now; days as days, because what is written in
     * December is read in the next year.
     */
    @Transactional(propagation = Propagation.MANDATORY)
    public void write(OrderId order, String who, Sentence what) {
        jdbc.sql("""
            insert into order_history (order_id, at, who, text_key, arguments)
            values (:order, :at, :who, :key, :arguments)
            """)
                .param("order", order.value())
                .param("at", Timestamp.from(clock.instant()))
                .param("who", who)
                .param("key", what.key())
                .param("arguments", what.arguments().stream().map(this::stored).toArray(String[]::new))
                .update();
    }

    /** Newest first. */
    public List<HistoryLine> of(OrderId order) {
        return jdbc.sql("select * from order_history where order_id = :order order by id desc")
                .param("order", order.value())
                .query((row, n) -> new HistoryLine(
                        row.getTimestamp("at").toInstant(),
                        row.getString("who"),
                        new Sentence(
                                row.getString("text_key"),
                                Arrays.stream((Object[])
                                                row.getArray("arguments").getArray())
                                        .map(OrderHistory::read)
                                        .toList())))
                .list();
    }

    private String stored(Object argument) {
        return argument instanceof LocalDate day ? A_DAY + day : figures.shown(argument);
    }

    private static Object read(Object stored) {
        String text = String.valueOf(stored);
        if (text.startsWith(A_DAY)) {
            try {
                return LocalDate.parse(text.substring(A_DAY.length()));
            } catch (DateTimeParseException words) {
                return text; // somebody's own words, which happen to begin like a day
            }
        }
        return text;
    }
}
