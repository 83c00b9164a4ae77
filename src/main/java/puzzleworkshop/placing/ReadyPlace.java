package puzzleworkshop.placing;

import java.awt.geom.AffineTransform;
import java.util.List;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Refused;

/**
 * A place that holds and is shown to lie inside its print, with what is cut there.
 *
 * @param traced whether its own frame was traced, where the one tick of the checklist does not say so
 */
record ReadyPlace(Position position, CutJob job, Machine machine, DrawnPrint print, boolean traced) {

    /** The whole cut on the bed; refused when it would leave it. */
    CutPlan cut() {
        CutPlan plan = print.plan().transformed(toBed());
        if (!bed().holds(plan.frame().grownBy(machine.beam().kerf().mm() / 2))) {
            throw new Refused("placing.file.outside-bed", machine.name());
        }
        return plan;
    }

    /** What is traced before; refused when it would leave the bed. */
    CurvePath frame() {
        CurvePath frame = print.frame(0).transformed(toBed());
        if (!bed().holds(frame.bounds())) {
            throw new Refused("placing.file.outside-bed", machine.name());
        }
        return frame;
    }

    /** Where the edges of the print lie. */
    CurvePath edges() {
        Bounds edges = print.edges(position.turns());
        return CurvePath.through(
                        List.of(
                                new Point(edges.minX(), edges.minY()),
                                new Point(edges.maxX(), edges.minY()),
                                new Point(edges.maxX(), edges.maxY()),
                                new Point(edges.minX(), edges.maxY())),
                        true)
                .transformed(position.place().transform());
    }

    private Bounds bed() {
        return new Bounds(
                0, 0, machine.bed().width().mm(), machine.bed().height().mm());
    }

    /** The whole way of a drawn point to the bed: turned by quarters, then to where the print lies. */
    private AffineTransform toBed() {
        Similarity place = position.place();
        Similarity cut = position.followed() ? place : place.unstretched(middle());
        AffineTransform way = cut.transform();
        way.concatenate(DrawnPrint.quarters(position.turns()));
        return way;
    }

    /** The middle of the visited marks, about which the stretch is left out; as the proof did. */
    private Point middle() {
        List<Point> marks = position.visits().stream()
                .map(seen -> DrawnPrint.turned(seen.visit().drawn(), position.turns()))
                .toList();
        if (marks.isEmpty()) {
            return new Point(0, 0);
        }
        double x = marks.stream().mapToDouble(Point::xMm).average().orElseThrow();
        double y = marks.stream().mapToDouble(Point::yMm).average().orElseThrow();
        return new Point(x, y);
    }
}
