package puzzleworkshop.placing;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Repository;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.machines.BedCorner;
import puzzleworkshop.machines.MachineAxes;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;

@Repository
class PositionStore {

    private static final String ROWS = """
        select p.*, (select max(m.moved_at) from placing_moved m where m.after_id = p.id) as moved_at
        from placing_position p
        """;

    private final JdbcClient jdbc;

    PositionStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    PlacingRules rules() {
        return jdbc.sql("select * from placing_rules")
                .query((row, n) -> new PlacingRules(
                        Length.mm(row.getDouble("reading_mm")),
                        Length.mm(row.getDouble("repeatability_mm")),
                        row.getBoolean("follow"),
                        new Percent(row.getBigDecimal("follow_most_percent"))))
                .optional()
                .orElse(PlacingRules.USUAL);
    }

    void keep(PlacingRules rules) {
        jdbc.sql("""
            insert into placing_rules (one, reading_mm, repeatability_mm, follow, follow_most_percent)
            values (true, :reading, :repeatability, :follow, :most)
            on conflict (one) do update set reading_mm = excluded.reading_mm,
                repeatability_mm = excluded.repeatability_mm, follow = excluded.follow,
                follow_most_percent = excluded.follow_most_percent
            """)
                .param("reading", rules.reading().mm())
                .param("repeatability", rules.repeatability().mm())
                .param("follow", rules.follow())
                .param("most", rules.followMost().hundredths())
                .update();
    }

    long add(Position p) {
        long id = jdbc.sql("""
            insert into placing_position (job_id, machine_id, copy, source, in_jig, quarter_turns, origin_corner,
                x_to_right, y_to_back, coordinate_unit, bed_width_mm, bed_height_mm, finished_width_mm,
                finished_height_mm, overhang_mm, hold_down_mm, kerf_mm, a, b, dx_mm, dy_mm, follow, spare_mm, uncertainty_mm, measured_by,
                measured_at)
            values (:job, :machine, :copy, :source, :jig, :turns, :origin, :xRight, :yBack, :unit, :bedWidth,
                :bedHeight, :width, :height, :overhang, :holdDown, :kerf, :a, :b, :dx, :dy, :follow, :spare, :uncertainty, :by, :at)
            returning id
            """)
                .param("job", p.jobId())
                .param("machine", p.machineId())
                .param("copy", p.copy())
                .param("source", p.source().name())
                .param("jig", p.inJig())
                .param("turns", p.turns())
                .param("origin", p.axes().origin().name())
                .param("xRight", p.axes().xToRight())
                .param("yBack", p.axes().yToBack())
                .param("unit", p.axes().unit().name())
                .param("bedWidth", p.bed().width().mm())
                .param("bedHeight", p.bed().height().mm())
                .param("width", p.finished().width().mm())
                .param("height", p.finished().height().mm())
                .param("overhang", p.overhang().mm())
                .param("holdDown", p.holdDown().mm())
                .param("kerf", p.kerf().mm())
                .param("a", p.place().a())
                .param("b", p.place().b())
                .param("dx", p.place().dxMm())
                .param("dy", p.place().dyMm())
                .param("follow", p.followed())
                .param("spare", p.spare().mm())
                .param("uncertainty", p.uncertainty().mm())
                .param("by", p.by())
                .param("at", p.at().atOffset(ZoneOffset.UTC))
                .query(Long.class)
                .single();
        for (Position.Visited visited : p.visits()) {
            jdbc.sql("""
                insert into placing_mark (position_id, mark, drawn_x_mm, drawn_y_mm, shown_x, shown_y, residual_mm)
                values (:id, :mark, :drawnX, :drawnY, :shownX, :shownY, :residual)
                """)
                    .param("id", id)
                    .param("mark", visited.visit().mark())
                    .param("drawnX", visited.visit().drawn().xMm())
                    .param("drawnY", visited.visit().drawn().yMm())
                    .param("shownX", visited.visit().shownX())
                    .param("shownY", visited.visit().shownY())
                    .param("residual", visited.residual().mm())
                    .update();
        }
        return id;
    }

    void moved(Position position, String by, Instant at) {
        jdbc.sql("""
            insert into placing_moved (job_id, copy, after_id, moved_by, moved_at)
            values (:job, :copy, :after, :by, :at)
            """)
                .param("job", position.jobId())
                .param("copy", position.copy())
                .param("after", position.id())
                .param("by", by)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
    }

    Optional<Position> find(long id) {
        return with(jdbc.sql(ROWS + " where p.id = :id").param("id", id)).stream()
                .findFirst();
    }

    /** Oldest first. */
    List<Position> ofJob(long jobId) {
        return with(jdbc.sql(ROWS + " where p.job_id = :job order by p.id").param("job", jobId));
    }

    /** Measured by marks, newest first. */
    List<Position> measuredOn(long machineId, int most) {
        return with(
                jdbc.sql(ROWS + " where p.machine_id = :machine and p.source = 'MARKS' order by p.id desc limit :most")
                        .param("machine", machineId)
                        .param("most", most));
    }

    /** When the fence was put on a machine's bed, oldest first. */
    List<Instant> fencesLaid(long machineId) {
        return jdbc.sql("select laid_at from placing_fence where machine_id = :machine order by laid_at, id")
                .param("machine", machineId)
                .query((row, n) -> row.getObject(1, OffsetDateTime.class).toInstant())
                .list();
    }

    void fenceLaid(long machineId, String by, Instant at) {
        jdbc.sql("insert into placing_fence (machine_id, laid_by, laid_at) values (:machine, :by, :at)")
                .param("machine", machineId)
                .param("by", by)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
    }

    void traced(Position position, String by, Instant at) {
        jdbc.sql("""
            insert into placing_traced (position_id, traced_by, traced_at) values (:id, :by, :at)
            on conflict (position_id) do nothing
            """)
                .param("id", position.id())
                .param("by", by)
                .param("at", at.atOffset(ZoneOffset.UTC))
                .update();
    }

    /** Places of these cuts whose own frame was traced. */
    Set<Long> traced(List<Long> jobs) {
        return Set.copyOf(jdbc.sql("""
            select t.position_id from placing_traced t join placing_position p on p.id = t.position_id
            where p.job_id in (:jobs)
            """).param("jobs", jobs).query(Long.class).list());
    }

    private List<Position> with(JdbcClient.StatementSpec sql) {
        List<Position> bare = sql.query((row, n) -> position(row)).list();
        if (bare.isEmpty()) {
            return bare;
        }
        Map<Long, List<Marked>> marks = jdbc
                .sql("select * from placing_mark where position_id in (:ids) order by mark")
                .param("ids", bare.stream().map(Position::id).toList())
                .query((row, n) -> marked(row))
                .list()
                .stream()
                .collect(Collectors.groupingBy(Marked::position));
        return bare.stream()
                .map(p -> withVisits(
                        p,
                        marks.getOrDefault(p.id(), List.of()).stream()
                                .map(Marked::visited)
                                .toList()))
                .toList();
    }

    private record Marked(long position, Position.Visited visited) {}

    private static Marked marked(ResultSet row) throws SQLException {
        return new Marked(
                row.getLong("position_id"),
                new Position.Visited(
                        new MarkVisit(
                                row.getInt("mark"),
                                new Point(row.getDouble("drawn_x_mm"), row.getDouble("drawn_y_mm")),
                                row.getDouble("shown_x"),
                                row.getDouble("shown_y")),
                        Length.mm(row.getDouble("residual_mm"))));
    }

    private static Position withVisits(Position p, List<Position.Visited> visits) {
        return new Position(
                p.id(),
                p.jobId(),
                p.machineId(),
                p.copy(),
                p.source(),
                p.inJig(),
                p.turns(),
                p.axes(),
                p.bed(),
                p.finished(),
                p.overhang(),
                p.holdDown(),
                p.kerf(),
                visits,
                p.place(),
                p.followed(),
                p.spare(),
                p.uncertainty(),
                p.moved(),
                p.by(),
                p.at());
    }

    private static Position position(ResultSet row) throws SQLException {
        return new Position(
                row.getLong("id"),
                row.getLong("job_id"),
                row.getLong("machine_id"),
                row.getInt("copy"),
                Position.Source.valueOf(row.getString("source")),
                row.getBoolean("in_jig"),
                row.getInt("quarter_turns"),
                new MachineAxes(
                        BedCorner.valueOf(row.getString("origin_corner")),
                        row.getBoolean("x_to_right"),
                        row.getBoolean("y_to_back"),
                        MachineAxes.Unit.valueOf(row.getString("coordinate_unit"))),
                Size.mm(row.getDouble("bed_width_mm"), row.getDouble("bed_height_mm")),
                Size.mm(row.getDouble("finished_width_mm"), row.getDouble("finished_height_mm")),
                Length.mm(row.getDouble("overhang_mm")),
                Length.mm(row.getDouble("hold_down_mm")),
                Length.mm(row.getDouble("kerf_mm")),
                List.of(),
                new Similarity(row.getDouble("a"), row.getDouble("b"), row.getDouble("dx_mm"), row.getDouble("dy_mm")),
                row.getBoolean("follow"),
                Length.mm(row.getDouble("spare_mm")),
                Length.mm(row.getDouble("uncertainty_mm")),
                Optional.ofNullable(row.getObject("moved_at", OffsetDateTime.class))
                        .map(OffsetDateTime::toInstant),
                row.getString("measured_by"),
                row.getObject("measured_at", OffsetDateTime.class).toInstant());
    }
}
