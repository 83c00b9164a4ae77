package puzzleworkshop.pattern.smallparts;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether a solid fits entirely into the small-parts cylinder: 31.75 mm across, open at the top, its bottom slanted by
 * 45° so that it is 25.4 mm deep on one side and 57.15 mm on the other (16 CFR 1501.4, figure 1: 1.25, 1 and 2.25 in).
 *
 * <p>The inside of the cylinder is convex, so a solid fits exactly when its convex hull does, and it is enough to look
 * at corner points (and a roundness about them, for a ball or a rounded rod). For one orientation the answer is exact:
 * the solid is raised to the rim, and the best place in plan is the right-most point of an intersection of discs. All
 * orientations are covered by boxes of quaternions that are halved until they are decided: a whole box is out when the
 * solid does not fit in its middle orientation even into a cylinder larger by as much as any point can move within the
 * box. What is not decided within the budget is answered {@link Answer#UNSURE} and must be treated as fitting.
 */
final class SmallPartsCylinder {

    static final double RADIUS_MM = 31.75 / 2;
    static final double SHALLOW_MM = 25.4;
    static final double DEEP_MM = 57.15;

    private static final double BOTTOM = SHALLOW_MM + RADIUS_MM;
    private static final double ROOT_2 = Math.sqrt(2);
    /** The search along one line stops this close to its best; the cylinder is taken larger by it. */
    private static final double SEARCH_MM = 0.01;

    private static final double FINEST_MM = 0.04;
    private static final int FIRST_CUT = 4;
    private static final List<double[]> LIKELY = likely();
    /** A tangent that falls faster says nothing that could be reckoned with: the edge of the circle. */
    private static final double STEEPEST = -1e6;

    enum Answer {
        FITS,
        DOES_NOT_FIT,
        UNSURE
    }

    private final TurnedSolid solid;
    private final double round;
    private final double slack;
    private double slope;
    private int looks;

    private SmallPartsCylinder(TurnedSolid solid, double roundMm, double slackMm) {
        this.solid = solid;
        this.round = roundMm;
        this.slack = slackMm;
    }

    /**
     * @param solid what is put in
     * @param roundMm radius of a ball carried along the hull (0 for a solid with sharp edges)
     * @param slackMm by how much the cylinder is taken larger on all sides, to be on the safe side
     * @param budget most orientations looked at
     */
    static Answer test(TurnedSolid solid, double roundMm, double slackMm, int budget) {
        return new SmallPartsCylinder(solid, roundMm, slackMm).answer(budget);
    }

    private Answer answer(int budget) {
        if (likelyOrientationFits()) {
            return Answer.FITS;
        }
        ArrayDeque<double[]> boxes = new ArrayDeque<>();
        // The cylinder is its own mirror image front to back. For a solid that is its own too (a plate about its middle)
        // each orientation (w, i, j, k) fits just as (i, w, -k, -j) does, and two of the four faces tell all.
        for (int face = 0; face < 4; face += solid.isItsOwnMirrorImage() ? 2 : 1) {
            for (int i = 0; i < FIRST_CUT * FIRST_CUT * FIRST_CUT; i++) {
                double half = 1.0 / FIRST_CUT;
                boxes.add(new double[] {
                    face,
                    -1 + half * (1 + 2 * (i % FIRST_CUT)),
                    -1 + half * (1 + 2 * (i / FIRST_CUT % FIRST_CUT)),
                    -1 + half * (1 + 2 * (i / FIRST_CUT / FIRST_CUT)),
                    half
                });
            }
        }
        while (!boxes.isEmpty()) {
            double[] box = boxes.poll();
            double half = box[4];
            double moved = mostMoved(half);
            solid.turnTo(quaternion(box));
            if (!fits(moved)) {
                continue;
            }
            if (fits(0)) {
                return Answer.FITS;
            }
            if (moved < FINEST_MM || looks > budget) {
                return Answer.UNSURE;
            }
            for (int corner = 0; corner < 8; corner++) {
                boxes.add(new double[] {
                    box[0],
                    box[1] + ((corner & 1) == 0 ? half : -half) / 2,
                    box[2] + ((corner & 2) == 0 ? half : -half) / 2,
                    box[3] + ((corner & 4) == 0 ? half : -half) / 2,
                    half / 2
                });
            }
        }
        return Answer.DOES_NOT_FIT;
    }

    /**
     * How far a point can move within a box. Points of the box lie within half·√3 of its middle; drawing in to the unit
     * sphere brings them no farther apart; a rotation turns by twice the angle between quaternions.
     */
    private double mostMoved(double half) {
        double chord = Math.min(2, half * Math.sqrt(3));
        double angle = Math.min(Math.PI, 4 * Math.asin(chord / 2));
        return 2 * solid.reach() * Math.sin(angle / 2);
    }

    private static double[] quaternion(double[] box) {
        double[] q = new double[4];
        int face = (int) box[0];
        q[face] = 1;
        for (int k = 1; k < 4; k++) {
            q[(face + k) % 4] = box[k];
        }
        return q;
    }

    /** Flat, upright and slanting plates turned about their own normal: where a piece that fits mostly does. */
    private boolean likelyOrientationFits() {
        for (double[] likely : LIKELY) {
            solid.turnTo(likely);
            if (fits(0)) {
                return true;
            }
        }
        return false;
    }

    private static List<double[]> likely() {
        List<double[]> all = new ArrayList<>();
        for (int facing = 0; facing < 4; facing++) {
            for (int lean = 0; lean <= 90; lean += 15) {
                for (int turn = 0; turn < 360; turn += 6) {
                    all.add(times(about(2, facing * 90), times(about(1, lean), about(2, turn))));
                }
            }
        }
        return all;
    }

    private static double[] about(int axis, double degrees) {
        double[] q = new double[4];
        q[0] = Math.cos(Math.toRadians(degrees) / 2);
        q[axis + 1] = Math.sin(Math.toRadians(degrees) / 2);
        return q;
    }

    private static double[] times(double[] a, double[] b) {
        return new double[] {
            a[0] * b[0] - a[1] * b[1] - a[2] * b[2] - a[3] * b[3],
            a[0] * b[1] + a[1] * b[0] + a[2] * b[3] - a[3] * b[2],
            a[0] * b[2] - a[1] * b[3] + a[2] * b[0] + a[3] * b[1],
            a[0] * b[3] + a[1] * b[2] - a[2] * b[1] + a[3] * b[0]
        };
    }

    /** Whether the turned solid can be put into the cylinder made larger by some millimetres on all sides. */
    private boolean fits(double larger) {
        looks++;
        double allowance = larger + slack + SEARCH_MM;
        double radius = RADIUS_MM + allowance - round;
        if (radius < 0) {
            return false;
        }
        if (solid.length() > 2 * radius
                || solid.width() > 2 * radius
                || solid.height() > DEEP_MM + 3 * allowance - 2 * round) {
            return false;
        }
        // raised to the rim; then it must stand far enough on the deep side
        double up = allowance - round - solid.highest();
        double from =
                Math.max(-BOTTOM + ROOT_2 * (round - allowance) - up - solid.leastSum(), -radius - solid.leftMost());
        double to = radius - solid.rightMost();
        return from <= to && roomBetween(from, to, radius);
    }

    /**
     * Whether some shift in x between the two leaves an interval of shifts in y. What is missing is a convex function of
     * the shift in x, so it lies above its tangents: where those of both ends cross above zero there is no room anywhere
     * between, else it is looked at there next (Kelley's cutting planes along a line). Of a piece that misses by a hair
     * hundreds of thousands of orientations are asked, and this mostly answers in two or three looks.
     */
    private boolean roomBetween(double from, double to, double radius) {
        double low = from;
        double atLow = missing(low, radius);
        double fall = slope;
        if (atLow <= 0) {
            return true;
        }
        double high = to;
        double atHigh = missing(high, radius);
        double rise = slope;
        if (atHigh <= 0) {
            return true;
        }
        while (fall < 0 && rise > 0 && high - low > SEARCH_MM / 10) {
            double next = (low + high) / 2;
            if (fall > STEEPEST && rise < -STEEPEST) {
                double beyond = (atHigh - atLow - rise * (high - low)) / (fall - rise);
                if (atLow + fall * beyond > 0) {
                    return false;
                }
                // never so near an end that the next step would say nothing new
                double least = (high - low) / 16;
                next = Math.clamp(low + beyond, low + least, high - least);
            }
            double there = missing(next, radius);
            if (there <= 0) {
                return true;
            }
            if (slope < 0) {
                low = next;
                atLow = there;
                fall = slope;
            } else {
                high = next;
                atHigh = there;
                rise = slope;
            }
        }
        return false;
    }

    /** What is missing at a shift; {@link #slope} is how fast that grows there with the shift. */
    private double missing(double shift, double radius) {
        double highestLow = Double.NEGATIVE_INFINITY;
        double lowestHigh = Double.POSITIVE_INFINITY;
        int lower = 0;
        int upper = 0;
        double square = radius * radius;
        double[] x = solid.x();
        double[] y = solid.y();
        for (int n = 0; n < solid.seenFromAbove(); n++) {
            double aside = x[n] + shift;
            double half = Math.sqrt(Math.max(0, square - aside * aside));
            if (-y[n] - half > highestLow) {
                highestLow = -y[n] - half;
                lower = n;
            }
            if (half - y[n] < lowestHigh) {
                lowestHigh = half - y[n];
                upper = n;
            }
        }
        slope = slopeOf(x[lower] + shift, square) + slopeOf(x[upper] + shift, square);
        return highestLow - lowestHigh;
    }

    /** How fast half of a chord gets shorter; at the circle's edge without end. */
    private static double slopeOf(double aside, double square) {
        return aside / Math.sqrt(Math.max(0, square - aside * aside));
    }
}
