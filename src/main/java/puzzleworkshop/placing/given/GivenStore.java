package puzzleworkshop.placing.given;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.cutfiles.writing.GcodeFile.Purpose;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Percent;

@Repository
public class GivenStore {

    private final JdbcClient jdbc;

    GivenStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * @param parameters none where no machine was written down
     * @param power really in the file: the setting's for a cut, the frame's for a frame, none for a dry run
     */
    public void add(GivenFile file, Optional<CutParameters> parameters, Percent power) {
        jdbc.sql("""
            insert into placing_given (order_id, job_id, position_id, purpose, format, file_name, sha256, bytes, setting,
                speed_mm_s, power_percent, passes, air_assist, given_by, given_at)
            values (:order, :job, :position, :purpose, :format, :name, :digest, :bytes, :setting, :speed, :power, :passes, :air,
                :by, :at)
            """)
                .param("order", file.order().map(OrderId::value).orElse(null))
                .param("job", file.jobId().orElse(null))
                .param("position", file.positionId().orElse(null))
                .param("purpose", file.purpose().name())
                .param("format", file.form().name())
                .param("name", file.name())
                .param("digest", file.sha256())
                .param("bytes", file.bytes())
                .param("setting", file.setting())
                .param("speed", parameters.map(set -> set.speed().mmPerSecond()).orElse(null), Types.DOUBLE)
                .param("power", parameters.map(set -> power.hundredths()).orElse(null), Types.NUMERIC)
                .param("passes", parameters.map(CutParameters::passes).orElse(null), Types.INTEGER)
                .param("air", parameters.map(CutParameters::airAssist).orElse(null), Types.BOOLEAN)
                .param("by", file.by())
                .param("at", file.at().atOffset(ZoneOffset.UTC))
                .update();
    }

    /** Of a cut, oldest first. */
    public List<GivenFile> ofJob(long job) {
        return jdbc.sql("select * from placing_given where job_id = :job order by id")
                .param("job", job)
                .query((row, n) -> file(row))
                .list();
    }

    /** Of an order, oldest first. */
    public List<GivenFile> ofOrder(OrderId order) {
        return jdbc.sql("select * from placing_given where order_id = :order order by id")
                .param("order", order.value())
                .query((row, n) -> file(row))
                .list();
    }

    private static GivenFile file(ResultSet row) throws SQLException {
        return new GivenFile(
                row.getLong("id"),
                Optional.ofNullable(row.getObject("order_id", Long.class)).map(OrderId::new),
                Optional.ofNullable(row.getObject("job_id", Long.class)),
                Optional.ofNullable(row.getObject("position_id", Long.class)),
                Purpose.valueOf(row.getString("purpose")),
                FileForm.valueOf(row.getString("format")),
                row.getString("file_name"),
                row.getString("sha256"),
                row.getInt("bytes"),
                row.getString("setting"),
                row.getString("given_by"),
                row.getObject("given_at", OffsetDateTime.class).toInstant());
    }
}
