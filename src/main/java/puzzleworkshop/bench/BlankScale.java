package puzzleworkshop.bench;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.boards.BlankPlan;
import puzzleworkshop.boards.BlanksWaiting;
import puzzleworkshop.boards.Chosen;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Order;
import puzzleworkshop.workshop.Workshop;

/** Blanks weighed before the cut, from which the count by weight becomes sharp; the last weighing counts. */
@Service
public class BlankScale {

    /**
     * What the scale showed.
     *
     * @param grams the blank of one puzzle, print on, no tape
     * @param stepGrams the smallest step that the scale shows
     * @param blank how large it was; empty where that was not noted
     */
    public record Reading(double grams, double stepGrams, Optional<Size> blank) {

        /** No board of this trade is lighter or heavier, in kg/m³ (balsa and press board lie outside; common practice). */
        private static final double LIGHTEST_WOOD = 300;

        private static final double HEAVIEST_WOOD = 1100;

        public Reading(double grams, double stepGrams) {
            this(grams, stepGrams, Optional.empty());
        }

        /** The density in kg/m³ that it means, when no wood of this trade has it; empty when it is likely. */
        public Optional<Double> unlikelyDensity(Length thickness) {
            return blank.map(size -> grams / 1000 / (size.area().mm2() * thickness.mm() * 1e-9))
                    .filter(density -> density < LIGHTEST_WOOD || density > HEAVIEST_WOOD);
        }
    }

    /** A board of a square metre and 25 mm: more is a slip of the pen. */
    private static final double MOST_GRAMS = 25_000;

    private static final double FINEST_STEP_GRAMS = 0.01;
    private static final double COARSEST_STEP_GRAMS = 100;

    private final JdbcClient jdbc;
    private final Clock clock;
    private final BlanksWaiting blanks;
    private final Workshop workshop;

    BlankScale(JdbcClient jdbc, Clock clock, BlanksWaiting blanks, Workshop workshop) {
        this.blanks = blanks;
        this.workshop = workshop;
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
            insert into blank_weighed (order_id, grams, step_grams, width_mm, height_mm, weighed_at, weighed_by)
            values (:order, :grams, :step, :width, :height, :at, :who)
            """)
                .param("order", order.value())
                .param("grams", reading.grams())
                .param("step", reading.stepGrams())
                .param("width", reading.blank().map(size -> size.width().mm()).orElse(null))
                .param("height", reading.blank().map(size -> size.height().mm()).orElse(null))
                .param("at", Timestamp.from(clock.instant()))
                .param("who", who)
                .update();
    }

    @Transactional(readOnly = true)
    public Optional<Reading> lastFor(OrderId order) {
        return Optional.ofNullable(lastFor(List.of(order)).get(order));
    }

    /** The same for many at once. */
    @Transactional(readOnly = true)
    public Map<OrderId, Reading> lastFor(Collection<OrderId> orders) {
        Map<OrderId, Reading> last = new HashMap<>();
        jdbc.sql("""
            select distinct on (order_id) order_id, grams, step_grams, width_mm, height_mm from blank_weighed
            where order_id = any (:orders) order by order_id, id desc
            """)
                .param("orders", orders.stream().map(OrderId::value).toArray(Long[]::new))
                .query((row, n) -> last.put(
                        new OrderId(row.getLong("order_id")),
                        new Reading(
                                row.getDouble("grams"),
                                row.getDouble("step_grams"),
                                Optional.ofNullable(row.getBigDecimal("width_mm"))
                                        .map(width -> Size.mm(width.doubleValue(), height(row))))))
                .list();
        return last;
    }

    private static double height(ResultSet row) {
        try {
            return row.getDouble("height_mm");
        } catch (SQLException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    /**
     * The blank of one puzzle as it lies on the boards chosen for the order, or as it is cut today where none is chosen;
     * empty where several puzzles are cut from one block, so that no blank of one puzzle can be weighed.
     */
    @Transactional(readOnly = true)
    public Optional<Size> blankOf(Order order) {
        List<Chosen> puzzles = blanks.of(order.id()).stream()
                .filter(blank -> blank.part() == BlankPlan.Part.PUZZLE)
                .toList();
        if (puzzles.stream().anyMatch(block -> block.count() > 1)) {
            return Optional.empty();
        }
        return Optional.of(puzzles.stream()
                .map(Chosen::size)
                .findFirst()
                .orElseGet(() -> workshop.tradeNumbers().blankFor(order.puzzle().finished())));
    }

    /** The step of the scale that was used last, whatever for: it is usually the same scale. */
    @Transactional(readOnly = true)
    public Optional<Double> usualStep() {
        return jdbc.sql("select step_grams from blank_weighed order by id desc limit 1")
                .query((row, n) -> row.getDouble(1))
                .optional();
    }
}
