package puzzleworkshop.cutfiles.found;

import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.WorkLimit;

/** Gathers what a reader finds in one file: lines, lines it is not sure of, and remarks, counted. */
public final class FoundLines {

    public static final int MOST_LINES = 300_000;
    public static final int MOST_SEGMENTS = 1_000_000;

    /** Steps to read a file, each about a ten-millionth of a second. Real files of 30 MB take a third of them. */
    private static final long STEPS_TO_READ = 12_000_000;

    /** Only a stop for the worst: a busy machine is slow, too. */
    private static final Duration TIME_TO_READ = Duration.ofSeconds(10);

    private record Counted(Remark.Kind kind, String key, List<Object> what) {}

    private final String name;
    private final WorkLimit limit;
    private final List<CurvePath> lines = new ArrayList<>();
    private final List<CurvePath> unsure = new ArrayList<>();
    private final Map<Counted, Integer> counts = new LinkedHashMap<>();
    private final List<Remark> remarks = new ArrayList<>();
    private long segments;

    public FoundLines(String name, WorkLimit limit) {
        this.name = name;
        this.limit = limit;
    }

    /**
     * The limit on the work that one file may cause. A small file can ask for endless work (a block of blocks of blocks);
     * a limit on its size does not help.
     *
     * @param name of the file, for the sentence it is refused with
     */
    public static WorkLimit limit(String name) {
        return WorkLimit.of(STEPS_TO_READ, TIME_TO_READ, () -> new Refused("cutfiles.file.too_much_work", name));
    }

    public String name() {
        return name;
    }

    public WorkLimit limit() {
        return limit;
    }

    /** The runs of a shape in millimetres; what was read before a damaged number stays. */
    public List<CurvePath> runs(Shape shape, AffineTransform toMm) {
        CurveRuns runs = new CurveRuns(limit);
        if (!runs.read(shape.getPathIterator(toMm))) {
            count(Remark.Kind.UNSURE, "cutfiles.file.unreadable_parts");
        }
        segments += runs.segments();
        if (segments > MOST_SEGMENTS) {
            throw new Refused("cutfiles.file.too_many_stretches", MOST_SEGMENTS);
        }
        return runs.lines();
    }

    public void add(List<CurvePath> more) {
        lines.addAll(more);
        checkCount();
    }

    public void addUnsure(List<CurvePath> more) {
        unsure.addAll(more);
        checkCount();
    }

    private void checkCount() {
        if (lines.size() + unsure.size() > MOST_LINES) {
            throw new Refused("cutfiles.file.too_many_lines", name, MOST_LINES);
        }
    }

    /** One more of a kind of remark, whose sentence takes the count first and then what is given. */
    public void count(Remark.Kind kind, String key, Object... what) {
        counts.merge(new Counted(kind, key, List.of(what)), 1, Integer::sum);
    }

    public void remark(Remark.Kind kind, String key, Object... arguments) {
        remarks.add(new Remark(kind, Sentence.of(key, arguments)));
    }

    public List<CurvePath> lines() {
        return lines;
    }

    public List<CurvePath> unsure() {
        return unsure;
    }

    /** What matters most first. */
    public List<Remark> remarks() {
        List<Remark> all = new ArrayList<>(remarks);
        counts.forEach((counted, count) -> {
            List<Object> arguments = new ArrayList<>();
            arguments.add(count);
            arguments.addAll(counted.what());
            all.add(new Remark(counted.kind(), new Sentence(counted.key(), arguments)));
        });
        all.sort(Comparator.comparing(Remark::kind));
        return all;
    }
}
