package puzzleworkshop.cutting.jobs;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.cutting.jobs.CutJob.Signature;
import puzzleworkshop.cutting.jobs.Workpiece.Film;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.SettingStore;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.sheets.board.BoardContamination;

@Repository
class CutJobStore {

    /** A job as its row says, before its setting and answers are joined. */
    record Row(
            long id,
            Optional<OrderId> order,
            String label,
            long settingId,
            BoardContamination past,
            Film film,
            String filmName,
            CutParameters parameters,
            Optional<Minutes> estimate,
            Optional<Instant> dialled,
            Optional<Instant> placed,
            Optional<Signature> started,
            Optional<Signature> ended,
            boolean brokenOff,
            OptionalLong trialId,
            Optional<Trial.Result> result,
            String note) {}

    /** Cuts older than these many no longer speak for the machine as it runs today. */
    private static final int RECENT_CUTS = 40;

    private static final String ROWS = """
        select j.*, t.result from cutting_job j left join cutting_trial t on t.id = j.trial_id where j.id = :id
        """;
    private static final String SEVERAL = """
        select j.*, t.result from cutting_job j left join cutting_trial t on t.id = j.trial_id where j.id = any (:ids)
        """;

    private final JdbcClient jdbc;

    CutJobStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<Trial.Finding> findingOf(long id) {
        return jdbc.sql("""
            select t.result, t.charring, t.gap_measured_mm, t.note
            from cutting_job j join cutting_trial t on t.id = j.trial_id where j.id = :id
            """)
                .param("id", id)
                .query((row, n) -> new Trial.Finding(
                        Trial.Result.valueOf(row.getString("result")),
                        row.getInt("charring"),
                        Optional.ofNullable(row.getBigDecimal("gap_measured_mm"))
                                .map(gap -> Length.mm(gap.doubleValue())),
                        row.getString("note")))
                .optional();
    }

    long insert(CutJob.Wish wish, long settingId, CutParameters parameters, String by, Instant at) {
        return jdbc.sql("""
            insert into cutting_job (order_id, label, setting_id, machine_id, speed_mm_s, power_percent, passes,
                air_assist, gap_mm, board_past, film, film_name, estimated_seconds, prepared_by, prepared_at)
            values (:order, :label, :setting, :machine, :speed, :power, :passes, :air, :gap, :past, :film, :filmName,
                :estimate, :by, :at)
            returning id
            """)
                .param("order", wish.order().map(OrderId::value).orElse(null))
                .param("label", wish.label())
                .param("setting", settingId)
                .param("machine", wish.machineId())
                .param("speed", parameters.speed().mmPerSecond())
                .param("power", parameters.power().hundredths())
                .param("passes", parameters.passes())
                .param("air", parameters.airAssist())
                .param("gap", parameters.gap().mm())
                .param("past", wish.workpiece().past().name())
                .param("film", wish.workpiece().film().name())
                .param("filmName", wish.workpiece().filmName())
                .param(
                        "estimate",
                        wish.estimate().map(time -> time.running().toSeconds()).orElse(null))
                .param("by", by)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .query(Long.class)
                .single();
    }

    Optional<Row> find(long id) {
        return jdbc.sql(ROWS).param("id", id).query((r, n) -> row(r)).optional();
    }

    /** In no certain order. */
    List<Row> find(List<Long> ids) {
        return jdbc.sql(SEVERAL)
                .param("ids", ids.toArray(Long[]::new))
                .query((r, n) -> row(r))
                .list();
    }

    /** Held until the transaction ends, so that two people cannot start or end it at once. */
    Optional<Row> lock(long id) {
        return jdbc.sql(ROWS + "for update of j")
                .param("id", id)
                .query((r, n) -> row(r))
                .optional();
    }

    Optional<Long> openFor(OrderId order) {
        return jdbc.sql("select id from cutting_job where order_id = :order and ended_at is null")
                .param("order", order.value())
                .query(Long.class)
                .optional();
    }

    List<Long> of(OrderId order) {
        return jdbc.sql("select id from cutting_job where order_id = :order order by id")
                .param("order", order.value())
                .query(Long.class)
                .list();
    }

    Optional<Long> lastFor(OrderId order) {
        return jdbc.sql("select id from cutting_job where order_id = :order order by id desc limit 1")
                .param("order", order.value())
                .query(Long.class)
                .optional();
    }

    Optional<Long> runningOn(long machineId) {
        return jdbc.sql("""
            select id from cutting_job where machine_id = :machine and started_at is not null and ended_at is null
            """).param("machine", machineId).query(Long.class).optional();
    }

    List<Long> latest(long machineId, int most) {
        return jdbc.sql("select id from cutting_job where machine_id = :machine order by id desc limit :most")
                .param("machine", machineId)
                .param("most", most)
                .query(Long.class)
                .list();
    }

    /** @param checkAgain when gap or air are others than were checked */
    void dial(long id, CutParameters parameters, Optional<Minutes> estimate, Optional<Instant> checkAgain) {
        jdbc.sql("""
            update cutting_job set speed_mm_s = :speed, power_percent = :power, passes = :passes, air_assist = :air,
                gap_mm = :gap, estimated_seconds = :estimate,
                dialled_at = coalesce(cast(:again as timestamptz), dialled_at)
            where id = :id
            """)
                .param("estimate", estimate.map(Minutes::toSeconds).orElse(null))
                .param(
                        "again",
                        checkAgain.map(at -> at.atOffset(ZoneOffset.UTC)).orElse(null))
                .param("speed", parameters.speed().mmPerSecond())
                .param("power", parameters.power().hundredths())
                .param("passes", parameters.passes())
                .param("air", parameters.airAssist())
                .param("gap", parameters.gap().mm())
                .param("id", id)
                .update();
    }

    void placed(long id, Instant at) {
        jdbc.sql("update cutting_job set placed_at = :at where id = :id")
                .param("at", at.atOffset(ZoneOffset.UTC))
                .param("id", id)
                .update();
    }

    void place(long id, Workpiece workpiece, long settingId) {
        jdbc.sql("""
            update cutting_job set board_past = :past, film = :film, film_name = :name, setting_id = :setting
            where id = :id
            """)
                .param("past", workpiece.past().name())
                .param("film", workpiece.film().name())
                .param("name", workpiece.filmName())
                .param("setting", settingId)
                .param("id", id)
                .update();
    }

    void start(long id, String by, Instant at) {
        jdbc.sql("update cutting_job set started_by = :by, started_at = :at where id = :id")
                .param("by", by)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .param("id", id)
                .update();
    }

    void end(
            long id,
            boolean brokenOff,
            Optional<Length> gap,
            OptionalLong trialId,
            String note,
            String by,
            Instant at) {
        jdbc.sql("""
            update cutting_job set ended_by = :by, ended_at = :at, broken_off = :broken, gap_measured_mm = :gap,
                trial_id = :trial, note = :note where id = :id
            """)
                .param("by", by)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .param("broken", brokenOff)
                .param("gap", gap.map(Length::mm).orElse(null))
                .param("trial", trialId.isPresent() ? trialId.getAsLong() : null)
                .param("note", note)
                .param("id", id)
                .update();
    }

    void answer(long jobId, CheckAnswer answer) {
        jdbc.sql("""
            insert into cutting_check (job_id, item, done, reason, checked_by, checked_at)
            values (:job, :item, :done, :reason, :by, :at)
            """)
                .param("job", jobId)
                .param("item", answer.item().name())
                .param("done", answer.done())
                .param("reason", answer.reason())
                .param("by", answer.by())
                .param("at", answer.at().atOffset(ZoneOffset.UTC))
                .update();
    }

    /** The newest answer to each item. */
    Map<CheckItem, CheckAnswer> answers(long jobId) {
        return answers(List.of(jobId)).getOrDefault(jobId, new EnumMap<>(CheckItem.class));
    }

    /** The newest answer to each item of these cuts; those without an answer are left out. */
    Map<Long, Map<CheckItem, CheckAnswer>> answers(List<Long> jobIds) {
        Map<Long, Map<CheckItem, CheckAnswer>> answers = new HashMap<>();
        jdbc.sql("""
            select distinct on (job_id, item) * from cutting_check where job_id = any (:jobs)
            order by job_id, item, id desc
            """).param("jobs", jobIds.toArray(Long[]::new)).query(row -> {
            CheckAnswer answer = new CheckAnswer(
                    CheckItem.valueOf(row.getString("item")),
                    row.getBoolean("done"),
                    row.getString("reason"),
                    row.getString("checked_by"),
                    row.getObject("checked_at", OffsetDateTime.class).toInstant());
            answers.computeIfAbsent(row.getLong("job_id"), job -> new EnumMap<>(CheckItem.class))
                    .put(answer.item(), answer);
        });
        return answers;
    }

    private static Row row(ResultSet row) throws SQLException {
        Long order = row.getObject("order_id", Long.class);
        Long trial = row.getObject("trial_id", Long.class);
        return new Row(
                row.getLong("id"),
                Optional.ofNullable(order).map(OrderId::new),
                row.getString("label"),
                row.getLong("setting_id"),
                BoardContamination.valueOf(row.getString("board_past")),
                Film.valueOf(row.getString("film")),
                row.getString("film_name"),
                SettingStore.parameters(row),
                Optional.ofNullable(row.getObject("estimated_seconds", Double.class))
                        .map(Minutes::ofSeconds),
                Optional.ofNullable(row.getObject("dialled_at", OffsetDateTime.class))
                        .map(OffsetDateTime::toInstant),
                Optional.ofNullable(row.getObject("placed_at", OffsetDateTime.class))
                        .map(OffsetDateTime::toInstant),
                signature(row, "started"),
                signature(row, "ended"),
                row.getBoolean("broken_off"),
                trial == null ? OptionalLong.empty() : OptionalLong.of(trial),
                Optional.ofNullable(row.getString("result")).map(Trial.Result::valueOf),
                row.getString("note"));
    }

    private static Optional<Signature> signature(ResultSet row, String what) throws SQLException {
        OffsetDateTime at = row.getObject(what + "_at", OffsetDateTime.class);
        return at == null ? Optional.empty() : Optional.of(new Signature(row.getString(what + "_by"), at.toInstant()));
    }

    /** Actual over estimated running time of the machine's latest whole cuts that took the passes they were planned with. */
    List<Double> ratios(long machineId) {
        return jdbc.sql("""
            select extract(epoch from j.ended_at - j.started_at) / j.estimated_seconds
            from cutting_job j join cutting_trial t on t.id = j.trial_id
            where j.machine_id = :id and j.ended_at > j.started_at and j.estimated_seconds is not null
                and t.passes = j.passes and not j.broken_off
            order by j.ended_at desc limit :most
            """)
                .param("id", machineId)
                .param("most", RECENT_CUTS)
                .query(Double.class)
                .list();
    }
}
