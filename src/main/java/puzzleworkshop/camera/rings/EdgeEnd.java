package puzzleworkshop.camera.rings;

/** An edge followed on beyond where it is seen: round where a longer stretch of it is round, else straight. */
final class EdgeEnd {

    /** Points of an arc, at least, and how far they may be from it, mm. */
    private static final int ROUND = 11;

    private static final double ARC_MM = 0.1;

    /** Radii that are followed, mm: what is wider is as good as straight, what is narrower is a corner. */
    private static final double NARROWEST_MM = 2.5;

    private static final double WIDEST_MM = 18;

    /** Points of a straight edge, at least, and how far they may be from it, mm. */
    private static final int STRAIGHT = 7;

    private static final double STRAIGHT_MM = 0.12;

    /** As many points are taken as lie on one line or arc, in these steps: the longer it is, the surer where it leads. */
    private static final int LONGER = 4;

    private static final int MOST = 27;

    private static final double STEP = 0.15;

    private EdgeEnd() {}

    /**
     * @param last point that is as seen
     * @param away which way the edge is seen from there: -1 before it in the ring, 1 after it
     * @param length how far it is followed, mm
     * @return points on from the last one, x, y in turn; null where the points are neither line nor arc
     */
    static double[] of(double[] ring, int last, int away, double length) {
        double[] found = null;
        for (int count = ROUND; count <= MOST; count += LONGER) {
            double[] longer = round(ring, last, away, count, length);
            if (longer == null) {
                break;
            }
            found = longer;
        }
        if (found != null) {
            return found;
        }
        for (int count = STRAIGHT; count <= MOST; count += LONGER) {
            double[] longer = straight(ring, last, away, count, length);
            if (longer == null) {
                break;
            }
            found = longer;
        }
        return found;
    }

    private static double[] straight(double[] ring, int last, int away, int count, double length) {
        int from = away < 0 ? last - count + 1 : last;
        double[] line = Lines.through(ring, from, count);
        if (Lines.worst(ring, from, count, line[0], line[1], line[2], line[3]) > STRAIGHT_MM) {
            return null;
        }
        int end = Math.floorMod(last, Ring.size(ring));
        int far = Math.floorMod(last + away * (count - 1), Ring.size(ring));
        double sign = Math.signum(
                (ring[2 * end] - ring[2 * far]) * line[2] + (ring[2 * end + 1] - ring[2 * far + 1]) * line[3]);
        double at = (ring[2 * end] - line[0]) * line[2] + (ring[2 * end + 1] - line[1]) * line[3];
        double[] path = new double[points(length)];
        for (int k = 0; k < path.length; k += 2) {
            double on = at + sign * STEP * k / 2;
            path[k] = line[0] + on * line[2];
            path[k + 1] = line[1] + on * line[3];
        }
        return path;
    }

    private static int points(double length) {
        return 2 * ((int) (length / STEP) + 2);
    }

    private static double[] round(double[] ring, int last, int away, int count, double length) {
        int n = Ring.size(ring);
        double[] circle = circle(ring, last, away, count);
        if (!(circle[2] > NARROWEST_MM && circle[2] < WIDEST_MM)) {
            return null;
        }
        double before = 0;
        double turned = 0;
        for (int k = count - 1; k >= 0; k--) {
            int i = Math.floorMod(last + away * k, n);
            double x = ring[2 * i] - circle[0];
            double y = ring[2 * i + 1] - circle[1];
            double angle = Math.atan2(y, x);
            if (Math.abs(Math.hypot(x, y) - circle[2]) > ARC_MM) {
                return null;
            }
            turned += k == count - 1 ? 0 : Math.IEEEremainder(angle - before, 2 * Math.PI);
            before = angle;
        }
        double[] path = new double[points(Math.min(length, circle[2] * Math.PI / 2))];
        for (int k = 0; k < path.length; k += 2) {
            double angle = before + Math.signum(turned) * STEP * k / 2 / circle[2];
            path[k] = circle[0] + circle[2] * Math.cos(angle);
            path[k + 1] = circle[1] + circle[2] * Math.sin(angle);
        }
        return path;
    }

    /** Middle and radius of the circle through points, by least squares of the squared distances (Kåsa 1976). */
    private static double[] circle(double[] ring, int last, int away, int count) {
        int n = Ring.size(ring);
        int first = Math.floorMod(last + away * (count / 2), n);
        double xx = 0;
        double xy = 0;
        double yy = 0;
        double x1 = 0;
        double y1 = 0;
        double zx = 0;
        double zy = 0;
        double z1 = 0;
        for (int k = 0; k < count; k++) {
            int i = Math.floorMod(last + away * k, n);
            double x = ring[2 * i] - ring[2 * first];
            double y = ring[2 * i + 1] - ring[2 * first + 1];
            double z = x * x + y * y;
            xx += x * x;
            xy += x * y;
            yy += y * y;
            x1 += x;
            y1 += y;
            zx += z * x;
            zy += z * y;
            z1 += z;
        }
        // about the mean, the constant term falls away
        xx -= x1 * x1 / count;
        xy -= x1 * y1 / count;
        yy -= y1 * y1 / count;
        zx -= z1 * x1 / count;
        zy -= z1 * y1 / count;
        double whole = 2 * (xx * yy - xy * xy);
        double x = (zx * yy - zy * xy) / whole;
        double y = (zy * xx - zx * xy) / whole;
        double radius = Math.sqrt(x * x + y * y + (z1 - 2 * x * x1 - 2 * y * y1) / count);
        return new double[] {ring[2 * first] + x, ring[2 * first + 1] + y, radius};
    }

    /** Where two of them meet first: the points of each next to that, or null. */
    static int[] meet(double[] one, double[] other) {
        for (int a = 1; a < one.length / 2; a++) {
            for (int b = 1; b < other.length / 2; b++) {
                if (cross(one, a, other, b) && cross(other, b, one, a)) {
                    return new int[] {a, b};
                }
            }
        }
        return null;
    }

    /** Whether the ends of a step lie to both sides of the line through another step. */
    private static boolean cross(double[] one, int a, double[] other, int b) {
        double dx = one[2 * a] - one[2 * a - 2];
        double dy = one[2 * a + 1] - one[2 * a - 1];
        double from = dx * (other[2 * b - 1] - one[2 * a - 1]) - dy * (other[2 * b - 2] - one[2 * a - 2]);
        double to = dx * (other[2 * b + 1] - one[2 * a - 1]) - dy * (other[2 * b] - one[2 * a - 2]);
        return from * to <= 0;
    }
}
