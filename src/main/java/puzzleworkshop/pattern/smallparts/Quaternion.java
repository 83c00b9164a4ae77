package puzzleworkshop.pattern.smallparts;

/** Turns as quaternions w, i, j, k of length 1. */
final class Quaternion {

    private Quaternion() {}

    /** @param axis 0, 1 or 2 for x, y or z */
    static double[] about(int axis, double degrees) {
        double[] q = new double[4];
        q[0] = Math.cos(Math.toRadians(degrees) / 2);
        q[axis + 1] = Math.sin(Math.toRadians(degrees) / 2);
        return q;
    }

    /** First b, then a. */
    static double[] after(double[] a, double[] b) {
        return new double[] {
            a[0] * b[0] - a[1] * b[1] - a[2] * b[2] - a[3] * b[3],
            a[0] * b[1] + a[1] * b[0] + a[2] * b[3] - a[3] * b[2],
            a[0] * b[2] - a[1] * b[3] + a[2] * b[0] + a[3] * b[1],
            a[0] * b[3] + a[1] * b[2] - a[2] * b[1] + a[3] * b[0]
        };
    }
}
