package puzzleworkshop.placing;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.util.List;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * A print as it was drawn, with what is to be cut from it. Millimetres from the top left corner of the finished picture, y
 * down. On the bed it may lie turned by quarters; the drawing is then turned clockwise about that corner first.
 *
 * @param finished size of the cut puzzle
 * @param overhang print beyond it on every side
 * @param marks middles of the crosses: top left, then clockwise; empty when the print carries none
 * @param plan what is cut, in order
 */
public record DrawnPrint(Size finished, Length overhang, List<Point> marks, CutPlan plan) {

    public DrawnPrint {
        marks = List.copyOf(marks);
    }

    /** Whether marks that were visited on the other are marks of this one. */
    public boolean isPrintedLike(DrawnPrint other) {
        return finished.equals(other.finished) && overhang.equals(other.overhang) && marks.equals(other.marks);
    }

    static AffineTransform quarters(int turns) {
        return AffineTransform.getQuadrantRotateInstance(turns);
    }

    static Point turned(Point p, int turns) {
        return moved(p, quarters(turns));
    }

    static Point moved(Point p, AffineTransform by) {
        Point2D q = by.transform(new Point2D.Double(p.xMm(), p.yMm()), null);
        return new Point(q.getX(), q.getY());
    }

    /** The edges of the print, overhang included. */
    public Bounds edges(int turns) {
        return edges(finished, overhang, turns);
    }

    static Bounds edges(Size finished, Length overhang, int turns) {
        double o = overhang.mm();
        return Bounds.at(turned(new Point(-o, -o), turns))
                .and(turned(
                        new Point(finished.width().mm() + o, finished.height().mm() + o), turns));
    }

    /** The outer cut. */
    public CurvePath outline(int turns) {
        return plan.outline().getFirst().transformed(quarters(turns));
    }

    /** An upright rectangle round everything that is cut: what is traced before the cut. */
    CurvePath frame(int turns) {
        Bounds all = plan.frame();
        return CurvePath.through(
                        List.of(
                                new Point(all.minX(), all.minY()),
                                new Point(all.maxX(), all.minY()),
                                new Point(all.maxX(), all.maxY()),
                                new Point(all.minX(), all.maxY())),
                        true)
                .transformed(quarters(turns));
    }
}
