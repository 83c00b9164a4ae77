package puzzleworkshop.pattern.judged;

import java.util.List;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.SegmentDistance;
import puzzleworkshop.geometry.path.SegmentGrid;

/**
 * The wood between the knobs of different joints: how near two lines come to each other where they do not meet. Lines that
 * meet are of course near there; of those only places count that lie more than five times as far apart along the lines as
 * across the wood (lines part by 30° or more where they meet, which is up to four times).
 */
final class KnobBridges {

    private static final double LONG_WAY = 5;

    private final double[] ax;
    private final double[] ay;
    private final double[] bx;
    private final double[] by;
    private final int[] joint;
    /** Along its joint, from the first point to the stretch and from the stretch to the last. */
    private final double[] before;

    private final double[] after;
    private final List<List<Point>> joints;

    private KnobBridges(List<List<Point>> joints) {
        this.joints = joints;
        int count = joints.stream().mapToInt(line -> line.size() - 1).sum();
        ax = new double[count];
        ay = new double[count];
        bx = new double[count];
        by = new double[count];
        joint = new int[count];
        before = new double[count];
        after = new double[count];
        int at = 0;
        for (int number = 0; number < joints.size(); number++) {
            List<Point> line = joints.get(number);
            int first = at;
            double gone = 0;
            for (int i = 1; i < line.size(); i++, at++) {
                ax[at] = line.get(i - 1).xMm();
                ay[at] = line.get(i - 1).yMm();
                bx[at] = line.get(i).xMm();
                by[at] = line.get(i).yMm();
                joint[at] = number;
                before[at] = gone;
                gone += line.get(i - 1).distanceTo(line.get(i));
                after[at] = gone;
            }
            for (int i = first; i < at; i++) {
                after[i] = gone - after[i];
            }
        }
    }

    /**
     * @param joints lines between two points where lines meet
     * @param lookMm farther apart than this is not looked for
     * @return the least distance, in drawn millimetres; infinite where none comes so near
     */
    static double leastMm(List<List<Point>> joints, double lookMm) {
        KnobBridges bridges = new KnobBridges(joints);
        if (bridges.ax.length == 0) {
            return Double.POSITIVE_INFINITY;
        }
        double[] least = {lookMm};
        SegmentGrid grid = new SegmentGrid(bridges.ax, bridges.ay, bridges.bx, bridges.by, bridges.ax.length, lookMm);
        for (int i = 0; i < bridges.ax.length; i++) {
            int one = i;
            grid.near(i, least[0], other -> {
                if (other < one && bridges.joint[other] != bridges.joint[one]) {
                    least[0] = Math.min(least[0], bridges.across(one, other, least[0]));
                }
            });
        }
        return least[0] < lookMm ? least[0] : Double.POSITIVE_INFINITY;
    }

    /** Infinite where the two are near only because their lines meet there. */
    private double across(int one, int other, double limit) {
        double across =
                SegmentDistance.between(ax[one], ay[one], bx[one], by[one], ax[other], ay[other], bx[other], by[other]);
        return across < limit && along(one, other) > LONG_WAY * across ? across : Double.POSITIVE_INFINITY;
    }

    /** The way along the two lines by a point where they meet; infinite where they do not. */
    private double along(int one, int other) {
        List<Point> first = joints.get(joint[one]);
        List<Point> second = joints.get(joint[other]);
        double least = Double.POSITIVE_INFINITY;
        if (first.getFirst().equals(second.getFirst())) {
            least = Math.min(least, before[one] + before[other]);
        }
        if (first.getFirst().equals(second.getLast())) {
            least = Math.min(least, before[one] + after[other]);
        }
        if (first.getLast().equals(second.getFirst())) {
            least = Math.min(least, after[one] + before[other]);
        }
        if (first.getLast().equals(second.getLast())) {
            least = Math.min(least, after[one] + after[other]);
        }
        return least;
    }
}
