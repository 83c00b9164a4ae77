package puzzleworkshop.placing;

import java.util.Currency;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.jobs.Workpiece;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.machines.FeedUnit;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.MachineAxes;
import puzzleworkshop.machines.MachineControl;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.support.PlainOrders;

/** Orders whose prints carry crosses, with a cut prepared on a machine that takes G-code. */
public final class LaidOrders {

    public static final long ORDER = 77;
    public static final BoardKind CRAFT = new BoardKind("birch-ply", "CRAFT", Length.mm(3));

    private LaidOrders() {}

    public static Machine machine(Machines machines) {
        return machines.save(Machine.usual("Bench laser", Currency.getInstance("EUR"))
                .withControl(new MachineControl(
                        MachineAxes.USUAL, FeedUnit.MM_PER_MINUTE, true, MachineControl.USUAL.words(), Percent.of(2))));
    }

    /** An order of 300 × 200 mm, printed with the usual crosses in an overhang of 3 mm. */
    public static CutJob printed(DataSource database, CutJobs jobs, Machine machine, long order) {
        PlainOrders.withIds(database, order);
        JdbcClient jdbc = JdbcClient.create(database);
        long run = jdbc.sql("""
            insert into print_run (state, medium_id, kind, medium_name, width_mm, height_mm, margin_mm, gap_mm, sheets,
                fewest_sheets, length_mm, least_length_mm, created_at, created_by, printed_at, cross_span_mm, cross_away_mm)
            select 'PRINTED', min(id), 'SHEET', 'A3', 297, 420, 3, 4, 1, 1, 420, 0, now(), 'mara', now(), 2, 1.5
            from print_medium
            returning id
            """).query(Long.class).single();
        jdbc.sql("""
            insert into print_run_item (run_id, order_id, order_number, copy, look, width_mm, height_mm, overhang_mm, sheet,
                x_mm, y_mm, turned, outcome)
            values (:run, :order, :number, 1, 'x', 300, 200, 3, 0, 6, 6, false, 'PRINTED')
            """)
                .param("run", run)
                .param("order", order)
                .param("number", "2026-" + (9000 + order))
                .update();
        return jobs.prepare(
                new CutJob.Wish(
                        Optional.of(new OrderId(order)),
                        "2026-" + (9000 + order),
                        machine.id(),
                        Workpiece.clean(CRAFT),
                        Optional.empty()),
                "Robin");
    }

    /** Half a degree turned, upper left corner of the finished picture at 40, 90 on the bed. */
    public static final Similarity PLACE = Similarity.about(new Point(0, 0), 1, Math.toRadians(0.5), 40, 90);

    public static Positions.Typed typed(DrawnPrint print, Machine machine, Similarity place) {
        List<MarkVisit> visits =
                MeasuringTest.visits(print, 0, place, machine.control().axes(), 4);
        return new Positions.Typed(1, 0, false, visits);
    }
}
