package puzzleworkshop.cutting.settings;

import java.math.BigDecimal;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.cutting.settings.Trial.Source;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Speed;

@Repository
public class SettingStore {

    /** A machine on a kind of board, with what was chosen last where anything was. */
    record Row(long id, long machineId, BoardKind board, Optional<CutParameters> chosen) {}

    private static final String ROWS = """
        select s.*, c.speed_mm_s, c.power_percent, c.passes, c.air_assist, c.gap_mm
        from cutting_setting s
        left join lateral (select * from cutting_setting_choice where setting_id = s.id order by id desc limit 1) c on true
        """;

    private final JdbcClient jdbc;

    SettingStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<Row> find(long machineId, BoardKind board) {
        return jdbc.sql(ROWS + """
            where machine_id = :machine and material = :material and grade = :grade and thickness_mm = :thickness
            """)
                .param("machine", machineId)
                .param("material", board.material())
                .param("grade", board.grade())
                .param("thickness", thickness(board))
                .query((row, n) -> row(row))
                .optional();
    }

    Optional<Row> find(long id) {
        return jdbc.sql(ROWS + "where s.id = :id")
                .param("id", id)
                .query((row, n) -> row(row))
                .optional();
    }

    /** In no certain order. */
    List<Row> find(List<Long> ids) {
        return jdbc.sql(ROWS + "where s.id = any (:ids)")
                .param("ids", ids.toArray(Long[]::new))
                .query((row, n) -> row(row))
                .list();
    }

    List<Row> ofMachine(long machineId) {
        return jdbc.sql(ROWS + "where machine_id = :machine order by material, grade, thickness_mm")
                .param("machine", machineId)
                .query((row, n) -> row(row))
                .list();
    }

    /** The setting's id, made when absent, locked until the transaction ends. */
    long lock(long machineId, BoardKind board) {
        return jdbc.sql("""
            insert into cutting_setting (machine_id, material, grade, thickness_mm)
            values (:machine, :material, :grade, :thickness)
            on conflict on constraint cutting_setting_once do update set material = excluded.material
            returning id
            """)
                .param("machine", machineId)
                .param("material", board.material())
                .param("grade", board.grade())
                .param("thickness", thickness(board))
                .query(Long.class)
                .single();
    }

    void choose(long settingId, CutParameters parameters, String by, Instant at) {
        jdbc.sql("""
            insert into cutting_setting_choice (setting_id, speed_mm_s, power_percent, passes, air_assist, gap_mm,
                chosen_by, chosen_at)
            values (:setting, :speed, :power, :passes, :air, :gap, :by, :at)
            """)
                .param("setting", settingId)
                .param("speed", parameters.speed().mmPerSecond())
                .param("power", parameters.power().hundredths())
                .param("passes", parameters.passes())
                .param("air", parameters.airAssist())
                .param("gap", parameters.gap().mm())
                .param("by", by)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
    }

    long addTrial(long settingId, CutParameters parameters, Finding finding, Source source, String by, Instant at) {
        return jdbc.sql("""
            insert into cutting_trial (setting_id, speed_mm_s, power_percent, passes, air_assist, gap_mm, result,
                charring, gap_measured_mm, note, source, made_by, made_at)
            values (:setting, :speed, :power, :passes, :air, :gap, :result, :charring, :measured, :note, :source,
                :by, :at)
            returning id
            """)
                .param("setting", settingId)
                .param("speed", parameters.speed().mmPerSecond())
                .param("power", parameters.power().hundredths())
                .param("passes", parameters.passes())
                .param("air", parameters.airAssist())
                .param("gap", parameters.gap().mm())
                .param("result", finding.result().name())
                .param("charring", finding.charring())
                .param("measured", finding.gapMeasured().map(Length::mm).orElse(null))
                .param("note", finding.note())
                .param("source", source.name())
                .param("by", by)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .query(Long.class)
                .single();
    }

    void addPhoto(long trialId, TrialPhoto photo) {
        jdbc.sql("insert into cutting_trial_photo values (:trial, :type, :picture)")
                .param("trial", trialId)
                .param("type", photo.mediaType())
                .param("picture", photo.bytes())
                .update();
    }

    Optional<TrialPhoto> photo(long trialId) {
        return jdbc.sql("select * from cutting_trial_photo where trial_id = :trial")
                .param("trial", trialId)
                .query((row, n) -> new TrialPhoto(row.getString("media_type"), row.getBytes("picture")))
                .optional();
    }

    /** Oldest first. */
    List<Trial> trials(long settingId) {
        return trials(List.of(settingId)).getOrDefault(settingId, List.of());
    }

    /** Of each of these settings, oldest first; those without trials are left out. */
    Map<Long, List<Trial>> trials(List<Long> settingIds) {
        Map<Long, List<Trial>> trials = new HashMap<>();
        jdbc.sql("""
            select t.*, p.trial_id is not null as has_photo
            from cutting_trial t left join cutting_trial_photo p on p.trial_id = t.id
            where setting_id = any (:settings) order by t.id
            """).param("settings", settingIds.toArray(Long[]::new)).query(row -> {
            trials.computeIfAbsent(row.getLong("setting_id"), setting -> new ArrayList<>())
                    .add(trial(row));
        });
        return trials;
    }

    private static Trial trial(ResultSet row) throws SQLException {
        return new Trial(
                row.getLong("id"),
                parameters(row),
                new Finding(
                        Result.valueOf(row.getString("result")),
                        row.getInt("charring"),
                        Optional.ofNullable(row.getObject("gap_measured_mm", Double.class))
                                .map(Length::mm),
                        row.getString("note")),
                Source.valueOf(row.getString("source")),
                row.getString("made_by"),
                row.getObject("made_at", OffsetDateTime.class).toInstant(),
                row.getBoolean("has_photo"));
    }

    public static CutParameters parameters(ResultSet row) throws SQLException {
        return new CutParameters(
                Speed.mmPerSecond(row.getDouble("speed_mm_s")),
                new Percent(row.getBigDecimal("power_percent")),
                row.getInt("passes"),
                row.getBoolean("air_assist"),
                Length.mm(row.getDouble("gap_mm")));
    }

    private static Row row(ResultSet row) throws SQLException {
        return new Row(
                row.getLong("id"),
                row.getLong("machine_id"),
                new BoardKind(
                        row.getString("material"), row.getString("grade"), Length.mm(row.getDouble("thickness_mm"))),
                row.getObject("speed_mm_s") == null ? Optional.empty() : Optional.of(parameters(row)));
    }

    private static BigDecimal thickness(BoardKind board) {
        return BigDecimal.valueOf(board.thickness().mm()).setScale(2, java.math.RoundingMode.HALF_UP);
    }
}
