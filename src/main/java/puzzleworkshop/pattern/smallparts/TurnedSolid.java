package puzzleworkshop.pattern.smallparts;

/**
 * The convex hull of some points, turned about its middle: how far it reaches, and the points that its outline has when it
 * is seen from above. Turned in place, for a search asks for hundreds of thousands of orientations of one solid.
 */
final class TurnedSolid {

    private final double[][] corners;
    /** How far a point lies above the one it is paired with in a plate; 0 for any other solid. */
    private final double thickness;

    private final double reach;
    private final double[] turnedX;
    private final double[] turnedY;
    private final double[] turnedZ;
    private final double[] x;
    private final double[] y;
    private final double[] z;
    private double liftX;
    private double liftY;
    private double liftZ;
    private int seen;
    private double highest;
    private double lowest;
    private double leastSum;
    private double leftMost;
    private double rightMost;
    private double front;
    private double back;

    private TurnedSolid(double[][] corners, double thickness, double reach) {
        this.corners = corners;
        this.thickness = thickness;
        this.reach = reach;
        turnedX = new double[corners.length];
        turnedY = new double[corners.length];
        turnedZ = new double[corners.length];
        x = new double[2 * corners.length];
        y = new double[2 * corners.length];
        z = new double[2 * corners.length];
    }

    /** @param corners points whose convex hull is the solid, x y z in mm */
    static TurnedSolid of(double[][] corners) {
        double[][] about = aboutTheirMiddle(corners);
        return new TurnedSolid(about, 0, farthest(about));
    }

    /**
     * A flat piece.
     *
     * @param outline corners of a convex outline one after the other, anticlockwise, x y in mm
     * @param thicknessMm more than 0
     */
    static TurnedSolid plate(double[][] outline, double thicknessMm) {
        double[][] bottom = new double[outline.length][];
        for (int i = 0; i < outline.length; i++) {
            bottom[i] = new double[] {outline[i][0], outline[i][1], 0};
        }
        bottom = aboutTheirMiddle(bottom);
        for (double[] corner : bottom) {
            corner[2] = -thicknessMm / 2;
        }
        return new TurnedSolid(bottom, thicknessMm, farthest(bottom));
    }

    private static double[][] aboutTheirMiddle(double[][] corners) {
        double[] middle = new double[3];
        for (double[] corner : corners) {
            for (int k = 0; k < 3; k++) {
                middle[k] += corner[k] / corners.length;
            }
        }
        double[][] about = new double[corners.length][3];
        for (int i = 0; i < corners.length; i++) {
            for (int k = 0; k < 3; k++) {
                about[i][k] = corners[i][k] - middle[k];
            }
        }
        return about;
    }

    private static double farthest(double[][] corners) {
        double farthest = 0;
        for (double[] c : corners) {
            farthest = Math.max(farthest, Math.sqrt(c[0] * c[0] + c[1] * c[1] + c[2] * c[2]));
        }
        return farthest;
    }

    /** Whether the plane z = 0, before it is turned, is a mirror that changes nothing. */
    boolean isItsOwnMirrorImage() {
        return thickness > 0;
    }

    /** How far the point farthest from the middle is from it, mm. */
    double reach() {
        return reach;
    }

    /** @param q a quaternion of any length but 0: w, i, j, k */
    void turnTo(double[] q) {
        double scale = 1 / Math.sqrt(q[0] * q[0] + q[1] * q[1] + q[2] * q[2] + q[3] * q[3]);
        double w = q[0] * scale;
        double i = q[1] * scale;
        double j = q[2] * scale;
        double k = q[3] * scale;
        double xx = 1 - 2 * (j * j + k * k);
        double xy = 2 * (i * j - k * w);
        double xz = 2 * (i * k + j * w);
        double yx = 2 * (i * j + k * w);
        double yy = 1 - 2 * (i * i + k * k);
        double yz = 2 * (j * k - i * w);
        double zx = 2 * (i * k - j * w);
        double zy = 2 * (j * k + i * w);
        double zz = 1 - 2 * (i * i + j * j);
        forget();
        for (int n = 0; n < corners.length; n++) {
            double[] c = corners[n];
            turnedX[n] = xx * c[0] + xy * c[1] + xz * c[2];
            turnedY[n] = yx * c[0] + yy * c[1] + yz * c[2];
            turnedZ[n] = zx * c[0] + zy * c[1] + zz * c[2];
            reachTo(turnedX[n], turnedY[n], turnedZ[n]);
        }
        liftX = xz * thickness;
        liftY = yz * thickness;
        liftZ = zz * thickness;
        if (thickness > 0) {
            lift();
        } else {
            for (int n = 0; n < corners.length; n++) {
                see(n, 0);
            }
        }
    }

    private void forget() {
        seen = 0;
        highest = Double.NEGATIVE_INFINITY;
        lowest = Double.POSITIVE_INFINITY;
        leastSum = Double.POSITIVE_INFINITY;
        leftMost = Double.POSITIVE_INFINITY;
        rightMost = Double.NEGATIVE_INFINITY;
        front = Double.POSITIVE_INFINITY;
        back = Double.NEGATIVE_INFINITY;
    }

    private void reachTo(double x, double y, double z) {
        highest = Math.max(highest, z);
        lowest = Math.min(lowest, z);
        leastSum = Math.min(leastSum, z + x);
        leftMost = Math.min(leftMost, x);
        rightMost = Math.max(rightMost, x);
        front = Math.min(front, y);
        back = Math.max(back, y);
    }

    /**
     * The plate's other side lies so far from the one that was turned. Of a corner both are seen only where the outline
     * goes over from the one side to the other; else the one that its two edges face.
     */
    private void lift() {
        highest += Math.max(0, liftZ);
        lowest += Math.min(0, liftZ);
        leastSum += Math.min(0, liftZ + liftX);
        leftMost += Math.min(0, liftX);
        rightMost += Math.max(0, liftX);
        front += Math.min(0, liftY);
        back += Math.max(0, liftY);
        int last = corners.length - 1;
        double before = facing(last, 0);
        for (int n = 0; n <= last; n++) {
            double behind = facing(n, n == last ? 0 : n + 1);
            if (before <= 0 || behind <= 0) {
                see(n, 0);
            }
            if (before >= 0 || behind >= 0) {
                see(n, 1);
            }
            before = behind;
        }
    }

    /** More than 0 where the other side's edge lies farther out, seen from above; a plate on its edge decides nothing. */
    private double facing(int from, int to) {
        double outwards = liftX * (turnedY[to] - turnedY[from]) - liftY * (turnedX[to] - turnedX[from]);
        return liftZ > 0 ? outwards : liftZ < 0 ? -outwards : 0;
    }

    private void see(int corner, int lifted) {
        x[seen] = turnedX[corner] + lifted * liftX;
        y[seen] = turnedY[corner] + lifted * liftY;
        z[seen] = turnedZ[corner] + lifted * liftZ;
        seen++;
    }

    /** The corner that lies farthest in a direction, as it is turned: x y z. */
    double[] farthest(double alongX, double alongY, double alongZ) {
        int best = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int n = 0; n < corners.length; n++) {
            double far = alongX * turnedX[n] + alongY * turnedY[n] + alongZ * turnedZ[n];
            if (far > most) {
                most = far;
                best = n;
            }
        }
        int lifted = alongX * liftX + alongY * liftY + alongZ * liftZ > 0 ? 1 : 0;
        return new double[] {
            turnedX[best] + lifted * liftX, turnedY[best] + lifted * liftY, turnedZ[best] + lifted * liftZ
        };
    }

    /** One of the corners seen from above, as it is turned: x y z. */
    double[] seen(int n) {
        return new double[] {x[n], y[n], z[n]};
    }

    /** How many of the first of {@link #x} and {@link #y} are the corners of the outline seen from above. */
    int seenFromAbove() {
        return seen;
    }

    double[] x() {
        return x;
    }

    double[] y() {
        return y;
    }

    double highest() {
        return highest;
    }

    double leftMost() {
        return leftMost;
    }

    double rightMost() {
        return rightMost;
    }

    double length() {
        return rightMost - leftMost;
    }

    double width() {
        return back - front;
    }

    double height() {
        return highest - lowest;
    }

    /** The least z + x of any point: how deep it stands along the slanted bottom. */
    double leastSum() {
        return leastSum;
    }
}
