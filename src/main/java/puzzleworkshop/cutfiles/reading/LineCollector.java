package puzzleworkshop.cutfiles.reading;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.PathIterator;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/** Gathers the lines of a file while it is read, and counts what was passed over. */
public final class LineCollector {

    private final String name;
    private final List<CurvePath> lines = new ArrayList<>();
    private final Map<String, Integer> passedOver = new LinkedHashMap<>();
    private final List<Sentence> remarks = new ArrayList<>();
    private int unreadable;

    public LineCollector(String name) {
        this.name = name;
    }

    /** Adds every run of a shape, moved into millimetres; runs without length are left out. */
    public void add(Shape shape, AffineTransform toMm) {
        double[] c = new double[6];
        Point start = null;
        Point at = null;
        List<Segment> run = new ArrayList<>();
        for (PathIterator it = shape.getPathIterator(toMm); !it.isDone(); it.next()) {
            int kind = it.currentSegment(c);
            switch (kind) {
                case PathIterator.SEG_MOVETO -> {
                    finish(start, run, false);
                    start = Point.of(c[0], c[1]);
                    at = start;
                }
                case PathIterator.SEG_LINETO -> {
                    Point to = Point.of(c[0], c[1]);
                    if (!to.equals(at)) {
                        run.add(new Segment.Line(to));
                    }
                    at = to;
                }
                case PathIterator.SEG_QUADTO -> {
                    // the same curve with its handle shared out: two thirds of the way from each end
                    Point handle = Point.of(c[0], c[1]);
                    Point to = Point.of(c[2], c[3]);
                    run.add(new Segment.Cubic(at.towards(handle, 2 / 3.0), to.towards(handle, 2 / 3.0), to));
                    at = to;
                }
                case PathIterator.SEG_CUBICTO -> {
                    Point to = Point.of(c[4], c[5]);
                    run.add(new Segment.Cubic(Point.of(c[0], c[1]), Point.of(c[2], c[3]), to));
                    at = to;
                }
                default -> {
                    finish(start, run, true);
                    at = start;
                }
            }
        }
        finish(start, run, false);
    }

    private void finish(Point start, List<Segment> run, boolean closed) {
        if (!run.isEmpty()) {
            boolean returns = run.getLast().to().distanceTo(start) < 1e-6;
            if (returns && !run.getLast().to().equals(start)) {
                run.add(new Segment.Line(start)); // a last digit apart
            }
            add(new CurvePath(start, run, closed || returns));
            run.clear();
        }
    }

    public void add(CurvePath line) {
        if (lines.size() == DrawnFile.MOST_LINES) {
            throw new Refused("pattern.file.too_many_lines", name, DrawnFile.MOST_LINES);
        }
        lines.add(line);
    }

    void passOver(String what) {
        passedOver.merge(what, 1, Integer::sum);
    }

    void unreadable() {
        unreadable++;
    }

    void remark(Sentence sentence) {
        remarks.add(sentence);
    }

    public List<CurvePath> lines() {
        return lines;
    }

    List<Sentence> remarks() {
        List<Sentence> all = new ArrayList<>(remarks);
        if (unreadable > 0) {
            all.add(Sentence.of("pattern.file.unreadable_parts", unreadable));
        }
        passedOver.forEach((what, count) -> all.add(Sentence.of("pattern.file.passed_over", count, what)));
        return all;
    }
}
