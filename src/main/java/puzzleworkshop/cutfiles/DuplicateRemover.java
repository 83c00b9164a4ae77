package puzzleworkshop.cutfiles;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.LineSegments;
import puzzleworkshop.geometry.path.Segment;

/** Takes the doubled runs out of the lines and keeps the rest, cut exactly: curves stay the curves they were. */
final class DuplicateRemover {

    private static final double SCRAP_MM = 0.12;
    private static final double AT_A_JOINT = 1e-9;

    private final List<CurvePath> lines;
    private final LineSegments all;

    private DuplicateRemover(List<CurvePath> lines, LineSegments all) {
        this.lines = lines;
        this.all = all;
    }

    static List<CurvePath> of(List<CurvePath> lines, LineSegments all, List<DoubledLines.Run> runs) {
        Map<Integer, List<DoubledLines.Run>> byLine = new HashMap<>();
        runs.forEach(run ->
                byLine.computeIfAbsent(run.line(), line -> new ArrayList<>()).add(run));
        DuplicateRemover keep = new DuplicateRemover(lines, all);
        List<CurvePath> kept = new ArrayList<>(lines.size());
        for (int number = 0; number < lines.size(); number++) {
            List<DoubledLines.Run> doubled = byLine.get(number);
            if (doubled == null) {
                kept.add(lines.get(number));
            } else {
                kept.addAll(keep.rest(number, doubled));
            }
        }
        return kept;
    }

    private List<CurvePath> rest(int number, List<DoubledLines.Run> doubled) {
        double whole = all.lengthOf(number);
        List<CurvePath> rest = new ArrayList<>();
        double at = 0;
        for (DoubledLines.Run run : doubled) {
            if (run.fromMm() - at > SCRAP_MM) {
                rest.add(part(number, at, run.fromMm()));
            }
            at = run.toMm();
        }
        boolean startsWhole = doubled.getFirst().fromMm() > SCRAP_MM;
        if (whole - at > SCRAP_MM) {
            CurvePath last = part(number, at, whole);
            if (lines.get(number).closed() && startsWhole) {
                // the piece runs on across the point where the closed line began
                List<Segment> joined = new ArrayList<>(last.segments());
                joined.addAll(rest.getFirst().segments());
                rest.set(0, new CurvePath(last.start(), joined, false));
            } else {
                rest.add(last);
            }
        }
        return rest;
    }

    private CurvePath part(int number, double fromMm, double toMm) {
        CurvePath line = lines.get(number);
        int first = all.stretchAt(number, fromMm);
        int last = all.stretchAt(number, Math.max(fromMm, toMm - AT_A_JOINT));
        int firstSegment = all.segment[first];
        int lastSegment = all.segment[last];
        double firstT = parameter(first, fromMm);
        double lastT = parameter(last, toMm);
        Point start = firstT == 0 ? line.startOf(firstSegment) : line.at(firstSegment, firstT);
        List<Segment> segments = new ArrayList<>();
        for (int s = firstSegment; s <= lastSegment; s++) {
            double low = s == firstSegment ? firstT : 0;
            double high = s == lastSegment ? lastT : 1;
            if (high > low) {
                segments.add(
                        low == 0 && high == 1
                                ? line.segments().get(s)
                                : line.segments().get(s).part(line.startOf(s), low, high));
            }
        }
        return new CurvePath(start, segments, false);
    }

    private double parameter(int stretch, double along) {
        double share = Math.clamp((along - all.way[stretch]) / all.length[stretch], 0, 1);
        double t = all.t0[stretch] + share * (all.t1[stretch] - all.t0[stretch]);
        return t < AT_A_JOINT ? 0 : t > 1 - AT_A_JOINT ? 1 : t;
    }
}
