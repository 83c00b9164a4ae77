package puzzleworkshop.progress;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Currency;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.progress.Rework.What;
import puzzleworkshop.workshop.Stage;

/**
 * The records of what was done: ticks, the clocks of the hands, and work that had to be made again. Lines are added, never
 * changed; the order's row is locked by whoever writes them.
 */
@Repository
public class Progress {

    private static final String TICKS = """
        select d.*, exists (select 1 from stage_undone u where u.done_id = d.id) as undone from stage_done d
        """;

    private final JdbcClient jdbc;
    private final Clock clock;

    Progress(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    public void insertTick(
            OrderId order, Stage stage, String who, String device, Optional<Minutes> minutes, Instant at) {
        jdbc.sql("""
            insert into stage_done (order_id, stage, attempt, done_at, done_by, device, minutes)
            select :order, :stage, count(*) + 1, :at, :who, :device, :minutes
            from stage_done where order_id = :order and stage = :stage
            """)
                .param("order", order.value())
                .param("stage", stage.name())
                .param("at", Timestamp.from(at))
                .param("who", who)
                .param("device", device.length() > 120 ? device.substring(0, 120) : device)
                .param("minutes", minutes.map(Minutes::value).orElse(null))
                .update();
    }

    /** In the order in which they were made. */
    public List<Tick> ticks(OrderId order) {
        return jdbc.sql(TICKS + "where d.order_id = :order order by d.id")
                .param("order", order.value())
                .query((row, n) -> tick(row))
                .list();
    }

    /** Of each order that was ticked since then its last tick that stands, newest first. */
    public List<Tick> lastSince(Instant from) {
        return jdbc.sql("""
            select * from (
                select distinct on (d.order_id) d.*, false as undone from stage_done d
                where d.order_id in (select order_id from stage_done where done_at > :from)
                  and not exists (select 1 from stage_undone u where u.done_id = d.id)
                order by d.order_id, d.id desc) as last
            where done_at > :from order by id desc
            """)
                .param("from", Timestamp.from(from))
                .query((row, n) -> tick(row))
                .list();
    }

    private static Tick tick(ResultSet row) throws SQLException {
        return new Tick(
                row.getLong("id"),
                new OrderId(row.getLong("order_id")),
                Stage.valueOf(row.getString("stage")),
                row.getInt("attempt"),
                row.getTimestamp("done_at").toInstant(),
                row.getString("done_by"),
                row.getString("device"),
                Optional.ofNullable(row.getBigDecimal("minutes")).map(m -> Minutes.of(m.doubleValue())),
                row.getBoolean("undone"));
    }

    /** When each stage of each order was last ticked, ticks taken back left out. */
    public Map<OrderId, Map<Stage, Instant>> lastByStage(Collection<OrderId> orders) {
        Map<OrderId, Map<Stage, Instant>> last = new HashMap<>();
        jdbc.sql("""
            select d.order_id, d.stage, max(d.done_at) as at from stage_done d
            where d.order_id = any (:orders) and not exists (select 1 from stage_undone u where u.done_id = d.id)
            group by d.order_id, d.stage
            """).param("orders", ids(orders)).query(row -> {
            last.computeIfAbsent(new OrderId(row.getLong("order_id")), order -> new EnumMap<>(Stage.class))
                    .put(
                            Stage.valueOf(row.getString("stage")),
                            row.getTimestamp("at").toInstant());
        });
        return last;
    }

    private static Long[] ids(Collection<OrderId> orders) {
        return orders.stream().map(OrderId::value).toArray(Long[]::new);
    }

    public void undo(Tick tick, String who, Instant at) {
        jdbc.sql("insert into stage_undone (done_id, undone_at, undone_by) values (:id, :at, :who)")
                .param("id", tick.id())
                .param("at", Timestamp.from(at))
                .param("who", who)
                .update();
    }

    public void start(OrderId order, Stage stage, String who, Instant at) {
        jdbc.sql("insert into stage_timer (order_id, stage, started_at, started_by) values (:order, :stage, :at, :who)")
                .param("order", order.value())
                .param("stage", stage.name())
                .param("at", Timestamp.from(at))
                .param("who", who)
                .update();
    }

    public boolean stop(OrderId order, String who, Instant at) {
        return jdbc.sql("""
            update stage_timer set stopped_at = greatest(:at, started_at), stopped_by = :who
            where order_id = :order and stopped_at is null
            """)
                        .param("order", order.value())
                        .param("at", Timestamp.from(at))
                        .param("who", who)
                        .update()
                > 0;
    }

    /** Minutes on stopped clocks of the stage that nothing has counted yet. */
    public Minutes stoppedAt(OrderId order, Stage stage) {
        return jdbc.sql("""
            select coalesce(sum(extract(epoch from stopped_at - started_at)) / 60, 0) from stage_timer
            where order_id = :order and stage = :stage and stopped_at is not null and not booked
            """)
                .param("order", order.value())
                .param("stage", stage.name())
                .query((row, n) -> Minutes.of(row.getDouble(1)))
                .single();
    }

    /** Minutes on stopped clocks of the stage that no tick has counted yet, and marks them as counted. */
    public Optional<Minutes> book(OrderId order, Stage stage) {
        return jdbc.sql("""
            with counted as (
                update stage_timer set booked = true
                where order_id = :order and stage = :stage and stopped_at is not null and not booked
                returning extract(epoch from stopped_at - started_at) / 60 as minutes)
            select sum(minutes) from counted
            """)
                .param("order", order.value())
                .param("stage", stage.name())
                .query((row, n) -> Optional.ofNullable(row.getBigDecimal(1)).map(m -> Minutes.of(m.doubleValue())))
                .single();
    }

    public List<Running> running() {
        return jdbc.sql("select * from stage_timer where stopped_at is null order by started_at")
                .query((row, n) -> new Running(
                        new OrderId(row.getLong("order_id")),
                        Stage.valueOf(row.getString("stage")),
                        row.getTimestamp("started_at").toInstant(),
                        row.getString("started_by")))
                .list();
    }

    /** Minutes on stopped, not yet counted clocks. */
    private Map<Running.At, Double> waitingMinutes() {
        Map<Running.At, Double> minutes = new HashMap<>();
        jdbc.sql("""
            select order_id, stage, sum(extract(epoch from stopped_at - started_at)) / 60 as minutes
            from stage_timer where stopped_at is not null and not booked group by order_id, stage
            """)
                .query((row, n) -> minutes.put(
                        new Running.At(new OrderId(row.getLong("order_id")), Stage.valueOf(row.getString("stage"))),
                        row.getDouble("minutes")))
                .list();
        return minutes;
    }

    public long insert(Rework mishap) {
        return jdbc.sql("""
            insert into went_wrong (order_id, noticed_at, again_from, what, note, board_spoiled, minutes_lost,
                laser_minutes_lost, material_lost, currency, happened_at, told_by)
            values (:order, :noticed, :again, :what, :note, :board, :hands, :laser, :material, :currency, :at, :who)
            returning id
            """)
                .param("order", mishap.order().value())
                .param("noticed", mishap.noticedAt().name())
                .param("again", mishap.againFrom().name())
                .param("what", mishap.what().name())
                .param("note", mishap.note())
                .param("board", mishap.boardSpoiled())
                .param("hands", mishap.handsLost().value())
                .param("laser", mishap.laserLost().value())
                .param("material", mishap.materialLost().amount())
                .param("currency", mishap.materialLost().currency().getCurrencyCode())
                .param("at", Timestamp.from(mishap.at()))
                .param("who", mishap.who())
                .query(Long.class)
                .single();
    }

    public Rework mishap(long number) {
        return jdbc.sql("select * from went_wrong where id = :id")
                .param("id", number)
                .query((row, n) -> mishap(row))
                .single();
    }

    public List<Rework> mishaps(OrderId order) {
        return jdbc.sql("select * from went_wrong where order_id = :order order by id")
                .param("order", order.value())
                .query((row, n) -> mishap(row))
                .list();
    }

    /** When the order last began again after something went wrong; the beginning of time where nothing did. */
    public Instant lastBeginning(OrderId order) {
        List<Rework> mishaps = mishaps(order);
        return mishaps.isEmpty() ? Instant.EPOCH : mishaps.getLast().at();
    }

    public List<Rework> mishapsSince(Instant from) {
        return jdbc.sql("select * from went_wrong where happened_at >= :from order by id")
                .param("from", Timestamp.from(from))
                .query((row, n) -> mishap(row))
                .list();
    }

    /** Orders whose last mishap sent them back before the mask, so that a board cut before it no longer serves. */
    public Set<OrderId> madeAfresh(Collection<OrderId> orders) {
        return new HashSet<>(jdbc.sql("""
            select order_id from (
                select distinct on (order_id) order_id, again_from from went_wrong
                where order_id = any (:orders) order by order_id, id desc) as last
            where again_from in ('PRINT', 'LAMINATE', 'SHEET_PREP', 'STICK')
            """)
                .param("orders", ids(orders))
                .query((row, n) -> new OrderId(row.getLong("order_id")))
                .list());
    }

    private static Rework mishap(ResultSet row) throws SQLException {
        return new Rework(
                row.getLong("id"),
                new OrderId(row.getLong("order_id")),
                Stage.valueOf(row.getString("noticed_at")),
                Stage.valueOf(row.getString("again_from")),
                What.valueOf(row.getString("what")),
                row.getString("note"),
                row.getBoolean("board_spoiled"),
                Minutes.of(row.getDouble("minutes_lost")),
                Minutes.of(row.getDouble("laser_minutes_lost")),
                Money.of(row.getBigDecimal("material_lost"), Currency.getInstance(row.getString("currency")))
                        .rounded(),
                row.getTimestamp("happened_at").toInstant(),
                row.getString("told_by"));
    }

    /** How far orders have come; every order that is asked about is answered. */
    public Map<OrderId, SoFar> soFar(Collection<OrderId> asked) {
        Map<OrderId, Map<Stage, Instant>> last = lastByStage(asked);
        Map<Running.At, Double> waiting = waitingMinutes();
        Set<OrderId> afresh = madeAfresh(asked);
        Map<OrderId, Running> running =
                running().stream().collect(Collectors.toMap(Running::order, Function.identity()));
        Map<OrderId, SoFar> answers = new HashMap<>();
        Instant now = clock.instant();
        for (OrderId id : asked) {
            Optional<Integer> begun = Optional.ofNullable(running.get(id))
                    .map(clockOf -> (int)
                            Math.round(Duration.between(clockOf.since(), now).toSeconds() / 60.0
                                    + waiting.getOrDefault(clockOf.at(), 0.0)));
            answers.put(
                    id,
                    new SoFar(
                            last.getOrDefault(id, Map.of()),
                            begun.map(minutes -> Math.max(0, minutes)),
                            afresh.contains(id)));
        }
        return answers;
    }
}
