package puzzleworkshop.cutting.time;

import java.util.Arrays;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;
import puzzleworkshop.machines.Motion;

/**
 * How long a head takes along one path, from rest to rest, when it may not exceed a speed, bends no faster than the
 * centripetal limit √(a·R), passes corners no faster than {@link Motion#cornerSpeed}, and speeds up and slows down with
 * the machine's acceleration.
 *
 * <p>Method: a path is cut into short stretches (lines stay whole; curves are divided by their length). The limit at a
 * joint is that of the bend there, within a stretch that of its middle: so the limit follows the bend instead of taking
 * the tightest place of each stretch, which made knobs up to 7 % too slow. A pass backwards and one forwards over the
 * squares of the speeds (v² = v₀² + 2·a·d) finds the fastest allowed speed at every joint, looking ahead over the whole
 * path; each stretch then is a trapezoid or triangle of known area. Exact for lines; for curves within 1 % of a model
 * that is twenty times finer, at 5 to 100 mm/s (PathPaceTest).
 */
final class PathPace {

    private static final double STRETCH_MM = 0.1;
    private static final int FEWEST = 8;
    private static final int MOST = 4000;

    private final Motion motion;
    private final double topSpeed;
    private double[] length = new double[256];
    private double[] limit = new double[256];
    /** Fastest speed at the joint before the stretch. */
    private double[] joint = new double[257];

    /** What the bend at the end of the last stretch allows. */
    private double exit;

    private int count;

    PathPace(Motion motion, double topSpeed) {
        this.motion = motion;
        this.topSpeed = topSpeed;
    }

    /** Seconds along the path. */
    double seconds(CurvePath path) {
        count = 0;
        exit = topSpeed;
        double[] heading = null;
        Point from = path.start();
        for (Segment segment : path.segments()) {
            double whole = segment.lengthMm(from);
            if (whole > 1e-9) {
                double corner = heading == null ? 0 : motion.cornerSpeed(turn(heading, direction(segment, from, 0)));
                lay(segment, from, whole, Math.min(corner, topSpeed));
                heading = direction(segment, from, 1);
            }
            from = segment.to();
        }
        return run();
    }

    /** Seconds over a straight distance from rest to rest: the trapezoid d/v + v/a, or the triangle 2·√(d/a). */
    static double straightSeconds(double distance, double speed, double acceleration) {
        return distance >= speed * speed / acceleration
                ? distance / speed + speed / acceleration
                : 2 * Math.sqrt(distance / acceleration);
    }

    private void lay(Segment segment, Point from, double whole, double entry) {
        if (segment instanceof Segment.Line) {
            add(whole, topSpeed, entry);
            return;
        }
        int steps = (int) Math.max(FEWEST, Math.min(MOST, Math.ceil(whole / STRETCH_MM)));
        double[] chord = new double[steps];
        double sum = 0;
        Point last = from;
        for (int i = 0; i < steps; i++) {
            Point next = segment.at(from, (i + 1.0) / steps);
            chord[i] = last.distanceTo(next);
            sum += chord[i];
            last = next;
        }
        double stretch = sum > 0 ? whole / sum : 0;
        for (int i = 0; i < steps; i++) {
            double joint = bendLimit(segment, from, (double) i / steps, chord[i]);
            double middle = bendLimit(segment, from, (i + 0.5) / steps, chord[i]);
            add(chord[i] * stretch, middle, i == 0 ? Math.min(entry, joint) : joint);
        }
        exit = bendLimit(segment, from, 1, chord[steps - 1]);
    }

    private double bendLimit(Segment segment, Point from, double t, double chord) {
        double bend = Math.abs(segment.curvature(from, t));
        if (!(bend > 0)) {
            return topSpeed; // straight, or a control point that lies on its end
        }
        // a cusp has no radius: the head creeps through it like through a sharp corner
        double creep = 0.1 * Math.sqrt(motion.acceleration() * chord);
        return Math.min(topSpeed, Math.max(motion.bendSpeed(1 / bend), creep));
    }

    private void add(double distance, double speed, double entry) {
        if (distance <= 0) {
            return;
        }
        if (count == length.length) {
            length = Arrays.copyOf(length, count * 2);
            limit = Arrays.copyOf(limit, count * 2);
            joint = Arrays.copyOf(joint, count * 2 + 1);
        }
        length[count] = distance;
        limit[count] = speed;
        joint[count] = count == 0 ? 0 : Math.min(entry, exit);
        exit = topSpeed;
        count++;
    }

    private double run() {
        if (count == 0) {
            return 0;
        }
        double twice = 2 * motion.acceleration();
        joint[count] = 0;
        for (int i = count - 1; i >= 0; i--) {
            joint[i] = Math.min(joint[i], Math.sqrt(joint[i + 1] * joint[i + 1] + twice * length[i]));
        }
        double seconds = 0;
        for (int i = 0; i < count; i++) {
            joint[i + 1] = Math.min(joint[i + 1], Math.sqrt(joint[i] * joint[i] + twice * length[i]));
            seconds += stretchSeconds(joint[i], joint[i + 1], length[i], limit[i]);
        }
        return seconds;
    }

    private double stretchSeconds(double in, double out, double distance, double top) {
        double a = motion.acceleration();
        double reach = Math.sqrt((in * in + out * out) / 2 + a * distance);
        double peak = Math.max(Math.max(in, out), Math.min(top, reach));
        double ramps = (2 * peak * peak - in * in - out * out) / (2 * a);
        double flat = Math.max(0, distance - ramps);
        return (peak - in) / a + (peak - out) / a + (flat > 0 ? flat / peak : 0);
    }

    /** Which way a stretch runs at its start or end; where a control point lies on its end, a little further in. */
    private static double[] direction(Segment segment, Point from, int end) {
        for (double inset = 0; inset < 0.02; inset += 0.005) {
            double[] v = segment.velocity(from, end == 0 ? inset : 1 - inset);
            if (Math.hypot(v[0], v[1]) > 1e-9) {
                return v;
            }
        }
        return new double[] {segment.to().xMm() - from.xMm(), segment.to().yMm() - from.yMm()};
    }

    private static double turn(double[] before, double[] after) {
        double cross = before[0] * after[1] - before[1] * after[0];
        double dot = before[0] * after[0] + before[1] * after[1];
        return Math.abs(Math.atan2(cross, dot));
    }
}
