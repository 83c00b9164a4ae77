package puzzleworkshop.printing;

import java.sql.Date;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.printing.crosses.Crosses;
import puzzleworkshop.printing.media.PrintMedium;

@Repository
class RunStore {

    private final JdbcClient jdbc;

    RunStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** One copy of an order that is planned or printed; {@code printed} tells which. */
    record Taken(OrderId order, int copy, boolean printed) {}

    Set<Taken> taken() {
        return new HashSet<>(
                jdbc.sql("select order_id, copy, outcome from print_run_item where outcome in ('PLANNED', 'PRINTED')")
                        .query((row, number) -> new Taken(
                                new OrderId(row.getLong("order_id")),
                                row.getInt("copy"),
                                row.getString("outcome").equals("PRINTED")))
                        .list());
    }

    long add(PrintMedium medium, Optional<Crosses> crosses, RunPlanner.Plan plan, Instant at, String who) {
        long id = layout(plan, jdbc.sql("""
            insert into print_run (state, medium_id, kind, medium_name, width_mm, height_mm, margin_mm, gap_mm, sheets,
                fewest_sheets, length_mm, least_length_mm, created_at, created_by, cross_span_mm, cross_away_mm)
            values ('PROPOSED', :medium, :kind, :name, :width, :height, :margin, :gap, :sheets, :fewest, :length, :least,
                :at, :who, :span, :away)
            returning id
            """))
                .param("medium", medium.id().orElseThrow())
                .param("kind", medium.kind().name())
                .param("name", medium.name())
                .param("width", medium.size().width().mm())
                .param("height", medium.size().height().mm())
                .param("margin", medium.margin().mm())
                .param("gap", medium.gap().mm())
                .param("at", at.atOffset(ZoneOffset.UTC))
                .param("who", who)
                .param("span", crosses.map(c -> c.span().mm()).orElse(null))
                .param("away", crosses.map(c -> c.away().mm()).orElse(null))
                .query(Long.class)
                .single();
        plan.items().forEach(item -> add(id, item));
        return id;
    }

    private void add(long run, RunItem item) {
        place(item, jdbc.sql("""
            insert into print_run_item (run_id, order_id, order_number, copy, look, width_mm, height_mm, overhang_mm, due_on,
                sheet, x_mm, y_mm, turned, pinned, outcome)
            values (:run, :order, :number, :copy, :look, :width, :height, :overhang, :due, :sheet, :x, :y, :turned, :pinned,
                'PLANNED')
            """))
                .param("run", run)
                .param("order", item.order().id().value())
                .param("number", item.order().number())
                .param("copy", item.copy())
                .param("look", item.look())
                .param("width", item.finished().width().mm())
                .param("height", item.finished().height().mm())
                .param("overhang", item.overhang().mm())
                .param("due", item.due().map(Date::valueOf).orElse(null))
                .update();
    }

    /** Writes where everything lies now; false when somebody changed the run since it was read. */
    boolean lay(long run, long version, RunPlanner.Plan plan) {
        int changed = layout(plan, jdbc.sql("""
            update print_run set sheets = :sheets, fewest_sheets = :fewest, length_mm = :length, least_length_mm = :least,
                version = version + 1
            where id = :id and version = :version and state = 'PROPOSED'
            """))
                .param("id", run)
                .param("version", version)
                .update();
        plan.items()
                .forEach(item ->
                        place(item, jdbc.sql("""
                            update print_run_item set sheet = :sheet, x_mm = :x, y_mm = :y, turned = :turned, pinned = :pinned where id = :id
                            """)).param("id", item.id()).update());
        return changed == 1;
    }

    private static JdbcClient.StatementSpec layout(RunPlanner.Plan plan, JdbcClient.StatementSpec sql) {
        return sql.param("sheets", plan.sheets())
                .param("fewest", plan.fewestSheets())
                .param("length", plan.length().mm())
                .param("least", plan.leastLength().mm());
    }

    private static JdbcClient.StatementSpec place(RunItem item, JdbcClient.StatementSpec sql) {
        return sql.param("sheet", item.sheet())
                .param("x", item.x().mm())
                .param("y", item.y().mm())
                .param("turned", item.turned())
                .param("pinned", item.pinned());
    }

    /** Moves a run on; false when it is not in the state it must come from. */
    boolean move(long run, RunState from, RunState to, Optional<Instant> printedAt) {
        return jdbc.sql("""
            update print_run set state = :to, printed_at = :printed, version = version + 1 where id = :id and state = :from
            """)
                        .param("to", to.name())
                        .param("from", from.name())
                        .param(
                                "printed",
                                printedAt.map(at -> at.atOffset(ZoneOffset.UTC)).orElse(null))
                        .param("id", run)
                        .update()
                == 1;
    }

    void outcome(long item, RunItem.Outcome outcome, String note) {
        jdbc.sql("update print_run_item set outcome = :outcome, note = :note, pinned = false where id = :id")
                .param("outcome", outcome.name())
                .param("note", note)
                .param("id", item)
                .update();
    }

    /** Prints of an order that were made and will be made again stay as history. */
    int madeAgain(OrderId order) {
        return jdbc.sql("update print_run_item set outcome = 'MADE_AGAIN' where order_id = :order and outcome ="
                        + " 'PRINTED'")
                .param("order", order.value())
                .update();
    }

    int printedCopies(OrderId order) {
        return jdbc.sql("select count(*) from print_run_item where order_id = :order and outcome = 'PRINTED'")
                .param("order", order.value())
                .query(Integer.class)
                .single();
    }

    Optional<PrintRun> find(long id, PrintMedium medium) {
        return jdbc.sql("select * from print_run where id = :id")
                .param("id", id)
                .query((row, number) -> run(row, medium))
                .optional();
    }

    Optional<Long> mediumOf(long run) {
        return jdbc.sql("select medium_id from print_run where id = :id")
                .param("id", run)
                .query(Long.class)
                .optional();
    }

    /** Holds the run's row until the transaction ends. */
    void lock(long run) {
        jdbc.sql("select id from print_run where id = :id for update")
                .param("id", run)
                .query(Long.class)
                .optional();
    }

    List<Long> open() {
        return jdbc.sql("select id from print_run where state in ('PROPOSED', 'CONFIRMED') order by id")
                .query(Long.class)
                .list();
    }

    List<Long> past(int offset, int limit) {
        return jdbc.sql("select id from print_run where state = 'PRINTED' order by printed_at desc, id desc offset"
                        + " :offset limit :limit")
                .param("offset", offset)
                .param("limit", limit)
                .query(Long.class)
                .list();
    }

    int countPast() {
        return jdbc.sql("select count(*) from print_run where state = 'PRINTED'")
                .query(Integer.class)
                .single();
    }

    Optional<Long> runOf(long item) {
        return jdbc.sql("select run_id from print_run_item where id = :id")
                .param("id", item)
                .query(Long.class)
                .optional();
    }

    List<PlannedPrints.InRun> inRuns(Collection<OrderId> orders) {
        return jdbc.sql("""
            select distinct on (order_id, outcome) order_id, run_id, outcome from print_run_item
            where order_id = any (:orders) and outcome in ('PLANNED', 'PRINTED')
            order by order_id, outcome, run_id desc
            """)
                .param("orders", ids(orders))
                .query((row, number) -> new PlannedPrints.InRun(
                        new OrderId(row.getLong("order_id")),
                        row.getLong("run_id"),
                        row.getString("outcome").equals("PRINTED")))
                .list();
    }

    Map<OrderId, PlannedPrints.OpenRun> openRuns(Collection<OrderId> orders) {
        Map<OrderId, PlannedPrints.OpenRun> open = new HashMap<>();
        jdbc.sql("""
            select i.order_id, max(i.run_id) as run, bool_and(r.state = 'CONFIRMED') as confirmed
            from print_run_item i join print_run r on r.id = i.run_id
            where i.order_id = any (:orders) and i.outcome = 'PLANNED' group by i.order_id
            """).param("orders", ids(orders)).query(row -> {
            open.put(
                    new OrderId(row.getLong("order_id")),
                    new PlannedPrints.OpenRun(row.getLong("run"), row.getBoolean("confirmed")));
        });
        return open;
    }

    private static Long[] ids(Collection<OrderId> orders) {
        return orders.stream().map(OrderId::value).toArray(Long[]::new);
    }

    void write(long run, Sentence what, Instant at, String who) {
        jdbc.sql("""
            insert into print_run_history (run_id, at, who, text_key, arguments)
            values (:run, :at, :who, :key, :arguments)
            """)
                .param("run", run)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .param("who", who)
                .param("key", what.key())
                .param(
                        "arguments",
                        what.arguments().stream().map(String::valueOf).toArray(String[]::new))
                .update();
    }

    List<RunLine> history(long run) {
        return jdbc.sql("select * from print_run_history where run_id = :run order by id")
                .param("run", run)
                .query((row, number) -> new RunLine(
                        row.getTimestamp("at").toInstant(),
                        row.getString("who"),
                        Sentence.of(row.getString("text_key"), spoken((String[])
                                row.getArray("arguments").getArray()))))
                .list();
    }

    /** Counts are counts again, so that a text can say 'one sheet' and 'two sheets'. */
    private static Object[] spoken(String[] kept) {
        return Arrays.stream(kept)
                .map(word -> word.matches("\\d{1,6}") ? (Object) Integer.valueOf(word) : word)
                .toArray();
    }

    private PrintRun run(ResultSet row, PrintMedium medium) throws SQLException {
        long id = row.getLong("id");
        PrintMedium asItWas = new PrintMedium(
                medium.id(),
                row.getString("medium_name"),
                PrintMedium.Kind.valueOf(row.getString("kind")),
                Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm")),
                Length.mm(row.getDouble("margin_mm")),
                Length.mm(row.getDouble("gap_mm")),
                medium.sticker(),
                medium.laminate(),
                medium.usual());
        List<RunItem> items = jdbc.sql("select * from print_run_item where run_id = :run order by id")
                .param("run", id)
                .query(RunStore::item)
                .list();
        return new PrintRun(
                id,
                RunState.valueOf(row.getString("state")),
                asItWas,
                crosses(row),
                items,
                row.getInt("sheets"),
                row.getInt("fewest_sheets"),
                Length.mm(row.getDouble("length_mm")),
                Length.mm(row.getDouble("least_length_mm")),
                row.getTimestamp("created_at").toInstant(),
                row.getString("created_by"),
                Optional.ofNullable(row.getTimestamp("printed_at")).map(java.sql.Timestamp::toInstant),
                row.getLong("version"));
    }

    private static Optional<Crosses> crosses(ResultSet row) throws SQLException {
        double span = row.getDouble("cross_span_mm");
        return row.wasNull()
                ? Optional.empty()
                : Optional.of(new Crosses(Length.mm(span), Length.mm(row.getDouble("cross_away_mm"))));
    }

    private static RunItem item(ResultSet row, int number) throws SQLException {
        Date due = row.getDate("due_on");
        Optional<LocalDate> dueOn = due == null ? Optional.empty() : Optional.of(due.toLocalDate());
        return new RunItem(
                row.getLong("id"),
                new OrderRef(new OrderId(row.getLong("order_id")), row.getString("order_number")),
                row.getInt("copy"),
                row.getString("look"),
                Size.mm(row.getDouble("width_mm"), row.getDouble("height_mm")),
                Length.mm(row.getDouble("overhang_mm")),
                dueOn,
                row.getInt("sheet"),
                Length.mm(row.getDouble("x_mm")),
                Length.mm(row.getDouble("y_mm")),
                row.getBoolean("turned"),
                row.getBoolean("pinned"),
                RunItem.Outcome.valueOf(row.getString("outcome")),
                row.getString("note"));
    }
}
