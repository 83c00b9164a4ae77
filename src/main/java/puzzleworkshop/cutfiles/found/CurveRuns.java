package puzzleworkshop.cutfiles.found;

import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.WorkLimit;

/** Takes a path of the JDK's two-dimensional shapes apart into runs of lines and curves; runs without length are left out. */
public final class CurveRuns {

    /** A kilometre: no drawing for a bench, and too far for distances of a hundredth of a millimetre. */
    private static final double FARTHEST_MM = 1e6;

    private static final double SAME_PLACE_MM = 1e-6;

    private final WorkLimit limit;
    private final List<CurvePath> lines = new ArrayList<>();
    private final List<Segment> run = new ArrayList<>();
    private Point start;
    private Point at;
    private long segments;

    public CurveRuns(WorkLimit limit) {
        this.limit = limit;
    }

    public List<CurvePath> lines() {
        return lines;
    }

    long segments() {
        return segments;
    }

    /** Whether all of it could be read; what comes before a number that is none stays. */
    public boolean read(PathIterator path) {
        double[] c = new double[6];
        try {
            for (; !path.isDone(); path.next()) {
                limit.steps(2);
                if (++segments > FoundLines.MOST_SEGMENTS) {
                    throw new Refused("cutfiles.file.too_many_stretches", FoundLines.MOST_SEGMENTS);
                }
                step(path.currentSegment(c), c);
            }
            finish(false);
            return true;
        } catch (IllegalArgumentException noNumber) {
            finish(false);
            return false;
        }
    }

    private void step(int kind, double[] c) {
        switch (kind) {
            case PathIterator.SEG_MOVETO -> {
                finish(false);
                start = point(c[0], c[1]);
                at = start;
            }
            case PathIterator.SEG_LINETO -> {
                Point to = point(c[0], c[1]);
                if (!to.equals(at)) {
                    run.add(new Segment.Line(to));
                }
                at = to;
            }
            case PathIterator.SEG_QUADTO -> {
                // the same curve with its handle shared out: two thirds of the way from each end
                Point handle = point(c[0], c[1]);
                Point to = point(c[2], c[3]);
                curve(at.towards(handle, 2 / 3.0), to.towards(handle, 2 / 3.0), to);
            }
            case PathIterator.SEG_CUBICTO -> curve(point(c[0], c[1]), point(c[2], c[3]), point(c[4], c[5]));
            default -> {
                finish(true);
                at = start;
            }
        }
    }

    private void curve(Point control1, Point control2, Point to) {
        // a curve whose points are all one has no length and no direction
        if (!(control1.equals(at) && control2.equals(at) && to.equals(at))) {
            run.add(new Segment.Cubic(control1, control2, to));
        }
        at = to;
    }

    private static Point point(double x, double y) {
        if (Math.abs(x) > FARTHEST_MM || Math.abs(y) > FARTHEST_MM) {
            throw new Refused("cutfiles.file.too_far");
        }
        return Point.of(x, y);
    }

    private void finish(boolean closed) {
        if (!run.isEmpty()) {
            boolean returns = run.getLast().to().distanceTo(start) < SAME_PLACE_MM;
            if (returns && !run.getLast().to().equals(start)) {
                run.add(new Segment.Line(start)); // a last digit apart
            }
            lines.add(new CurvePath(start, run, closed || returns));
            run.clear();
        }
    }
}
