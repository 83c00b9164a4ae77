package puzzleworkshop.bench;

import java.sql.Timestamp;
import java.time.Clock;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;

/** Blanks weighed before the cut, from which the count by weight becomes sharp; the last weighing counts. */
@Service
public class BlankScale {

    /**
     * What the scale showed.
     *
     * @param grams the blank of one puzzle, print on, no tape
     * @param stepGrams the smallest step that the scale shows
     */
    public record Reading(double grams, double stepGrams) {}

    /** A board of a square metre and 25 mm: more is a slip of the pen. */
    private static final double MOST_GRAMS = 25_000;

    private static final double FINEST_STEP_GRAMS = 0.01;
    private static final double COARSEST_STEP_GRAMS = 100;

    private final JdbcClient jdbc;
    private final Clock clock;

    BlankScale(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** @throws Refused when weight or step cannot be */
    @Transactional
    public void weighed(OrderId order, Reading reading, String who) {
        if (!(reading.grams() > 0)
                || reading.grams() > MOST_GRAMS
                || !(reading.stepGrams() >= FINEST_STEP_GRAMS)
                || reading.stepGrams() > COARSEST_STEP_GRAMS) {
            throw new Refused("bench.count.weigh.impossible", MOST_GRAMS, FINEST_STEP_GRAMS, COARSEST_STEP_GRAMS);
        }
        jdbc.sql("""
            insert into blank_weighed (order_id, grams, step_grams, weighed_at, weighed_by)
            values (:order, :grams, :step, :at, :who)
            """)
                .param("order", order.value())
                .param("grams", reading.grams())
                .param("step", reading.stepGrams())
                .param("at", Timestamp.from(clock.instant()))
                .param("who", who)
                .update();
    }

    @Transactional(readOnly = true)
    public Optional<Reading> lastFor(OrderId order) {
        return jdbc.sql("""
            select grams, step_grams from blank_weighed where order_id = :order order by id desc limit 1
            """)
                .param("order", order.value())
                .query((row, n) -> new Reading(row.getDouble("grams"), row.getDouble("step_grams")))
                .optional();
    }

    /** The step of the scale that was used last, whatever for: it is usually the same scale. */
    @Transactional(readOnly = true)
    public Optional<Double> usualStep() {
        return jdbc.sql("select step_grams from blank_weighed order by id desc limit 1")
                .query((row, n) -> row.getDouble(1))
                .optional();
    }
}
