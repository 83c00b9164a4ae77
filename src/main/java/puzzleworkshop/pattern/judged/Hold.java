package puzzleworkshop.pattern.judged;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.geometry.path.SegmentDistance;
import puzzleworkshop.pattern.CutPattern;

/**
 * Whether the pieces of a puzzle hold together: of each joint between two neighbours, how far one would have to be bent
 * or squeezed before it can be pulled off the other in the plane, the play that the kerf leaves taken off.
 *
 * <p>The rule: pulled in a direction u, a joint resists by the greatest step back of its line, measured across u, on the way
 * from one end to the other (a knob steps back by what its head overhangs its neck; a wave or a straight line does not). Its
 * grip is the least of these over all directions, less a kerf. Where it is above zero, a piece lifted by its corner carries
 * its neighbour along; that the neighbour does not tip out of the plane is friction and is not computed.
 *
 * @param joints inner edges between two points where lines meet
 * @param holding those with a grip above zero
 * @param weakestGripMm of the joints that hold, the least; zero when none does
 * @param narrowestMm least distance between lines, necks included, kerf taken off: the thinnest wood anywhere; a distance
 *        above three times the rule's is told as that
 * @param neckMm the narrowest neck, kerf taken off: how near a joint comes to itself; what the knobs of the three styles are
 *        compared by; infinite where none comes near itself
 * @param bridgeMm the least wood between the knobs of neighbouring edges, kerf taken off: how near two joints come to each
 *     other away from where they meet; infinite where none do within three times the rule's distance
 * @param leastWoodMm what the board's thickness asks for: half of it, at least 1.2 mm (common practice)
 */
public record Hold(
        int joints,
        int holding,
        double weakestGripMm,
        double narrowestMm,
        double neckMm,
        double bridgeMm,
        double leastWoodMm) {

    private static final int DIRECTIONS = 72;
    private static final double FLATTENING_MM = 0.02;
    private static final double LOOKED_TO = 3;
    private static final double USUALLY_BURNT_MM = 0.15;

    public static Hold of(CutPattern pattern) {
        double kerf = pattern.spec().kerf().mm();
        int holding = 0;
        double weakest = Double.POSITIVE_INFINITY;
        List<List<Point>> joints = joints(pattern);
        for (List<Point> joint : joints) {
            double grip = gripMm(joint) - kerf;
            if (grip > 0) {
                holding++;
                weakest = Math.min(weakest, grip);
            }
        }
        double neck = joints.stream().mapToDouble(Hold::neckMm).min().orElse(Double.POSITIVE_INFINITY) - kerf;
        double look = LOOKED_TO * pattern.verified().closestAllowedMm();
        List<List<Point>> all = new ArrayList<>(joints);
        all.addAll(runs(pattern.outline(), meetings(pattern)));
        // the check of the lines looks no farther than its limit
        double narrowest = Math.min(pattern.verified().smallestGapMm(), KnobBridges.leastMm(all, look)) - kerf;
        return new Hold(
                joints.size(),
                holding,
                holding == 0 ? 0 : weakest,
                Math.min(narrowest, neck),
                neck,
                KnobBridges.leastMm(joints, look) - kerf,
                pattern.verified().closestAllowedMm() - kerf);
    }

    /**
     * What a board of this grade asks for beside the rule for its thickness: inner plies of general board have gaps that are
     * filled, of construction board such that are not (common practice: a quarter, a half more).
     */
    public double leastWoodMm(String grade) {
        return leastWoodMm
                * switch (grade) {
                    case "CONSTRUCTION" -> 1.5;
                    case "GENERAL" -> 1.25;
                    default -> 1;
                };
    }

    /**
     * What must be sound wood of that: a rule for the wood as it is cut means wood whose edges are browned as a usual setting
     * browns them (3 mm of plywood at 5 mm/s in one pass: some {@value #USUALLY_BURNT_MM} mm on either side); where more is
     * browned, as much more has to be there.
     */
    public double leastSoundMm(String grade) {
        return leastWoodMm(grade) - 2 * USUALLY_BURNT_MM;
    }

    public boolean holdsTogether() {
        return holding == joints;
    }

    /** Over all directions the least of the greatest steps back across the direction. */
    static double gripMm(List<Point> line) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < DIRECTIONS; i++) {
            double angle = Math.PI * i / DIRECTIONS;
            double vx = Math.cos(angle);
            double vy = Math.sin(angle);
            double first = vx * line.getFirst().xMm() + vy * line.getFirst().yMm();
            double last = vx * line.getLast().xMm() + vy * line.getLast().yMm();
            // followed so that it advances across the direction; both pulls along it need the same way back
            double sign = last >= first ? 1 : -1;
            double farthest = Double.NEGATIVE_INFINITY;
            double back = 0;
            for (Point p : line) {
                double at = sign * (vx * p.xMm() + vy * p.yMm());
                farthest = Math.max(farthest, at);
                back = Math.max(back, farthest - at);
            }
            least = Math.min(least, back);
        }
        return least;
    }

    /** How near a line comes to itself across wood: to a place at least three times as far along the line as across. */
    static double neckMm(List<Point> line) {
        double[] way = new double[line.size()];
        for (int i = 1; i < way.length; i++) {
            way[i] = way[i - 1] + line.get(i - 1).distanceTo(line.get(i));
        }
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i + 1 < way.length; i++) {
            for (int j = i + 2; j + 1 < way.length; j++) {
                double along = way[j] - way[i + 1];
                double across = SegmentDistance.between(
                        line.get(i).xMm(),
                        line.get(i).yMm(),
                        line.get(i + 1).xMm(),
                        line.get(i + 1).yMm(),
                        line.get(j).xMm(),
                        line.get(j).yMm(),
                        line.get(j + 1).xMm(),
                        line.get(j + 1).yMm());
                if (along >= 3 * across) {
                    least = Math.min(least, across);
                }
            }
        }
        return least;
    }

    /** The inner lines, split where they meet others. */
    static List<List<Point>> joints(CutPattern pattern) {
        Map<Point, Integer> met = meetings(pattern);
        return pattern.inner().stream()
                .flatMap(path -> runs(path, met).stream())
                .toList();
    }

    private static Map<Point, Integer> meetings(CutPattern pattern) {
        Map<Point, Integer> met = new HashMap<>();
        List<CurvePath> all = new ArrayList<>(pattern.inner());
        all.add(pattern.outline());
        for (CurvePath path : all) {
            Set<Point> own = new HashSet<>();
            own.add(path.start());
            path.segments().forEach(segment -> own.add(segment.to()));
            own.forEach(point -> met.merge(point, 1, Integer::sum));
        }
        return met;
    }

    private static List<List<Point>> runs(CurvePath path, Map<Point, Integer> met) {
        List<List<Point>> runs = new ArrayList<>();
        Point start = path.start();
        List<Segment> run = new ArrayList<>();
        for (Segment segment : path.segments()) {
            run.add(segment);
            if (met.get(segment.to()) > 1) {
                runs.add(new CurvePath(start, run, false).flattened(FLATTENING_MM));
                start = segment.to();
                run = new ArrayList<>();
            }
        }
        if (!run.isEmpty()) {
            runs.add(new CurvePath(start, run, false).flattened(FLATTENING_MM));
        }
        return runs;
    }
}
