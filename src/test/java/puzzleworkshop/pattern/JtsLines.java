package puzzleworkshop.pattern;

import java.util.ArrayList;
import java.util.List;
import org.locationtech.jts.algorithm.RobustLineIntersector;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.noding.MCIndexNoder;
import org.locationtech.jts.noding.NodedSegmentString;
import org.locationtech.jts.noding.SegmentIntersectionDetector;
import org.locationtech.jts.noding.SegmentString;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * A second opinion on a pattern's lines by JTS: crossings in the inside of stretches and lines drawn twice. Shares no
 * code with our own check.
 */
public final class JtsLines {

    private JtsLines() {}

    /** The lines cut into stretches at the points of the pattern where lines may meet. */
    public static List<SegmentString> strings(CutPattern pattern) {
        List<SegmentString> strings = new ArrayList<>();
        for (CurvePath line : pattern.inner()) {
            strings.add(string(line));
        }
        strings.add(string(pattern.outline()));
        return strings;
    }

    private static NodedSegmentString string(CurvePath path) {
        Coordinate[] points =
                path.flattened(0.02).stream().map(JtsLines::coordinate).toArray(Coordinate[]::new);
        return new NodedSegmentString(points, path);
    }

    private static Coordinate coordinate(Point p) {
        return new Coordinate(p.xMm(), p.yMm());
    }

    /** How many pairs of stretches cross in their insides (meeting in a common point of both is no crossing). */
    public static int crossings(CutPattern pattern) {
        SegmentIntersectionDetector detector = new SegmentIntersectionDetector(new RobustLineIntersector());
        detector.setFindProper(true);
        detector.setFindAllIntersectionTypes(false);
        new MCIndexNoder(detector).computeNodes(strings(pattern));
        return detector.hasProperIntersection() ? 1 : 0;
    }

    /** How many straight stretches occur more than once, in either direction. */
    public static int doubled(CutPattern pattern) {
        java.util.Set<List<Long>> seen = new java.util.HashSet<>();
        int doubled = 0;
        for (SegmentString string : strings(pattern)) {
            for (int i = 1; i < string.size(); i++) {
                long ax = Math.round(string.getCoordinate(i - 1).x * 1e5);
                long ay = Math.round(string.getCoordinate(i - 1).y * 1e5);
                long bx = Math.round(string.getCoordinate(i).x * 1e5);
                long by = Math.round(string.getCoordinate(i).y * 1e5);
                boolean forwards = ax < bx || (ax == bx && ay < by);
                if (!seen.add(forwards ? List.of(ax, ay, bx, by) : List.of(bx, by, ax, ay))) {
                    doubled++;
                }
            }
        }
        return doubled;
    }
}
