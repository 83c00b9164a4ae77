package puzzleworkshop.cutfiles;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.cutfiles.reading.DrawnFile;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.LineSegments;
import puzzleworkshop.measure.Size;

/**
 * Inspects the lines of a cut file drawn elsewhere: doubled and overlapping lines (partial ones and near-coincident ones
 * within 0.05 mm too), open outline, crossings, loose ends, tiny stretches, lines outside the bed or the print. Which
 * crossings are trouble, since a puzzle's rows and columns must cross, is said in {@link Intersections}.
 */
public final class CutInspector {

    /** Places marked of each kind; all are counted. */
    public static final int MOST_MARKS = 400;

    private static final double SPECK_MM = 0.3;
    private static final double SHORTEST_STRETCH_MM = 0.05;
    private static final double AT_THE_FRAME_MM = 0.5;
    private static final double OVER_MM = 0.01;

    private final DrawnFile file;
    private final List<CurvePath> lines;
    private final LineSegments all;
    private final Bounds frame;
    private final List<Inspection.Finding> findings = new ArrayList<>();

    private CutInspector(DrawnFile file) {
        this.file = file;
        this.lines = file.lines();
        this.all = new LineSegments(lines);
        this.frame = file.bounds();
    }

    /**
     * @param bed the machine's bed, if lines beyond it are to be found; it starts at the file's origin
     * @param print the print, if lines beyond it are to be found; the file's lines lie in its middle
     */
    public static Inspection inspect(DrawnFile file, Optional<Size> bed, Optional<Size> print) {
        return new CutInspector(file).inspect(bed, print);
    }

    public static Inspection inspect(DrawnFile file) {
        return inspect(file, Optional.empty(), Optional.empty());
    }

    private Inspection inspect(Optional<Size> bed, Optional<Size> print) {
        List<DoubledLines.Run> doubled = DoubledLines.find(all, lines.size());
        tellDoubled(doubled);
        Intersections meetings = Intersections.find(all, lines, doubled, inside());
        tell(
                Inspection.Trouble.CROSSING,
                meetings.crossings(),
                List.of(),
                meetings.crossings().size(),
                0);
        tellLooseEnds(meetings.looseEnds());
        tellTiny();
        bed.ifPresent(size -> tellOutside(Inspection.Trouble.OUTSIDE_BED, onBed(size)));
        print.ifPresent(size -> tellOutside(Inspection.Trouble.OUTSIDE_PRINT, around(frame.centre(), size)));
        findings.sort(Comparator.comparing(Inspection.Finding::trouble));
        List<CurvePath> cleaned = DuplicateRemover.of(lines, all, doubled);
        return new Inspection(file, frame, length(lines), all.count, findings, cleaned, length(cleaned));
    }

    private static double length(List<CurvePath> paths) {
        return paths.stream().mapToDouble(CurvePath::lengthMm).sum();
    }

    private void tellDoubled(List<DoubledLines.Run> doubled) {
        List<CurvePath> marks = new ArrayList<>();
        double sum = 0;
        for (DoubledLines.Run run : doubled) {
            sum += run.lengthMm();
            if (marks.size() < MOST_MARKS) {
                marks.add(mark(run));
            }
        }
        tell(Inspection.Trouble.DOUBLED, List.of(), marks, doubled.size(), sum);
    }

    private CurvePath mark(DoubledLines.Run run) {
        List<Point> points = new ArrayList<>();
        points.add(all.placeAt(run.line(), run.fromMm()));
        for (int i = all.stretchAt(run.line(), run.fromMm()) + 1;
                i < all.firstOf[run.line() + 1] && all.way[i] < run.toMm();
                i++) {
            points.add(Point.of(all.ax[i], all.ay[i]));
        }
        points.add(all.placeAt(run.line(), run.toMm()));
        return CurvePath.through(points, false);
    }

    /** The frame without its rim, where an outline runs. */
    private Bounds inside() {
        return frame.width() > 4 * AT_THE_FRAME_MM && frame.height() > 4 * AT_THE_FRAME_MM
                ? frame.grownBy(-AT_THE_FRAME_MM)
                : frame;
    }

    private void tellLooseEnds(List<Point> ends) {
        List<Point> atFrame = new ArrayList<>();
        List<Point> loose = new ArrayList<>();
        Bounds inside = inside();
        for (Point end : ends) {
            (inside.holds(Bounds.at(end)) ? loose : atFrame).add(end);
        }
        tell(Inspection.Trouble.OPEN_OUTLINE, atFrame, List.of(), atFrame.size(), 0);
        tell(Inspection.Trouble.LOOSE_END, loose, List.of(), loose.size(), 0);
    }

    private void tellTiny() {
        List<Point> places = new ArrayList<>();
        double[] sum = {0};
        for (int number = 0; number < lines.size(); number++) {
            CurvePath line = lines.get(number);
            if (all.lengthOf(number) < SPECK_MM) {
                places.add(line.start());
                sum[0] += all.lengthOf(number);
                continue;
            }
            line.walk((from, segment) -> {
                double hull = from.distanceTo(segment.to());
                if (hull < SHORTEST_STRETCH_MM && segment.lengthMm(from) < SHORTEST_STRETCH_MM) {
                    places.add(from);
                    sum[0] += hull;
                }
            });
        }
        tell(Inspection.Trouble.TINY, places, List.of(), places.size(), sum[0]);
    }

    private Bounds onBed(Size bed) {
        double width = bed.width().mm();
        double height = bed.height().mm();
        // DXF is turned over on reading: what stands above its origin has negative y here
        return file.kind() == DrawnFile.Kind.DXF ? new Bounds(0, -height, width, 0) : new Bounds(0, 0, width, height);
    }

    private static Bounds around(Point middle, Size size) {
        double x = size.width().mm() / 2;
        double y = size.height().mm() / 2;
        return new Bounds(middle.xMm() - x, middle.yMm() - y, middle.xMm() + x, middle.yMm() + y);
    }

    private void tellOutside(Inspection.Trouble trouble, Bounds allowed) {
        Bounds with = allowed.grownBy(OVER_MM);
        List<CurvePath> marks = new ArrayList<>();
        int count = 0;
        double sum = 0;
        for (int number = 0; number < lines.size(); number++) {
            if (with.holds(lines.get(number).bounds())) {
                continue;
            }
            count++;
            for (int i = all.firstOf[number]; i < all.firstOf[number + 1]; i++) {
                boolean in = with.holds(new Bounds(
                        Math.min(all.ax[i], all.bx[i]),
                        Math.min(all.ay[i], all.by[i]),
                        Math.max(all.ax[i], all.bx[i]),
                        Math.max(all.ay[i], all.by[i])));
                sum += in ? 0 : all.length[i];
            }
            if (marks.size() < MOST_MARKS) {
                marks.add(lines.get(number));
            }
        }
        tell(trouble, List.of(), marks, count, sum);
    }

    private void tell(
            Inspection.Trouble trouble, List<Point> places, List<CurvePath> runs, int count, double lengthMm) {
        if (count > 0) {
            findings.add(new Inspection.Finding(
                    trouble, count, lengthMm, runs, places.subList(0, Math.min(MOST_MARKS, places.size()))));
        }
    }
}
