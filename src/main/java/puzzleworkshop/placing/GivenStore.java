package puzzleworkshop.placing;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.cutfiles.writing.GcodeFile.Purpose;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.measure.Percent;

@Repository
class GivenStore {

    private final JdbcClient jdbc;

    GivenStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** @param power really in the file: the setting's for a cut, the frame's for a frame, none for a dry run */
    void add(GivenFile file, CutParameters parameters, Percent power) {
        jdbc.sql("""
            insert into placing_given (job_id, position_id, purpose, format, file_name, sha256, bytes, setting,
                speed_mm_s, power_percent, passes, air_assist, given_by, given_at)
            values (:job, :position, :purpose, :format, :name, :digest, :bytes, :setting, :speed, :power, :passes, :air,
                :by, :at)
            """)
                .param("job", file.jobId())
                .param("position", file.positionId())
                .param("purpose", file.purpose().name())
                .param("format", file.form().name())
                .param("name", file.name())
                .param("digest", file.sha256())
                .param("bytes", file.bytes())
                .param("setting", file.setting())
                .param("speed", parameters.speed().mmPerSecond())
                .param("power", power.hundredths())
                .param("passes", parameters.passes())
                .param("air", parameters.airAssist())
                .param("by", file.by())
                .param("at", file.at().atOffset(ZoneOffset.UTC))
                .update();
    }

    /** Of several jobs, oldest first. */
    List<GivenFile> ofJobs(List<Long> jobs) {
        return jobs.isEmpty()
                ? List.of()
                : jdbc.sql("select * from placing_given where job_id in (:jobs) order by id")
                        .param("jobs", jobs)
                        .query((row, n) -> file(row))
                        .list();
    }

    private static GivenFile file(ResultSet row) throws SQLException {
        return new GivenFile(
                row.getLong("id"),
                row.getLong("job_id"),
                row.getLong("position_id"),
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
