package puzzleworkshop.pattern.smallparts;

/**
 * Why a turned solid has no room, in a form that says it for turns nearby too. Every wall of the cylinder asks of a point p
 * of the solid, shifted by s, that w·p + v·s be at most c for some fixed w, v and c. Added up with weights so that the shift
 * falls out, some such demands read 'a sum of w·p is at most c' for whatever shift; where that is wrong there is no room
 * (Farkas' lemma; by Helly's theorem three demands suffice in the plane). The same sum is wrong for every turn that leaves
 * it above c, and how far a turn can lower it is known: it is linear in the turn's matrix.
 */
final class FarkasCertificate {

    /** Sum of w times p transposed, p as it is turned. */
    private final double[][] sum = new double[3][3];

    private double most;
    private boolean valid;

    /** As if nothing had been said. */
    void begin() {
        for (double[] row : sum) {
            row[0] = 0;
            row[1] = 0;
            row[2] = 0;
        }
        most = 0;
        valid = true;
    }

    /** There is none: an answer was found that no sum of demands tells. */
    void none() {
        valid = false;
    }

    /** A demand more: weight · (x·p[0] + y·p[1] + z·p[2]) is at most weight · most. */
    void demand(double weight, double x, double y, double z, double[] p, double most) {
        for (int k = 0; k < 3; k++) {
            sum[0][k] += weight * x * p[k];
            sum[1][k] += weight * y * p[k];
            sum[2][k] += weight * z * p[k];
        }
        this.most += weight * most;
    }

    /**
     * Whether there is no room after any further turn by at most an angle, about whatever axis n. By Rodrigues' formula the
     * sum becomes tr K + sin θ n·k + (1 - cos θ)(n·Kn - tr K), with k the axial vector of K; n·Kn is no less than the least
     * eigenvalue of K's symmetric part, and that no less than their mean less √(2/3) of their spread (Wolkowicz and Styan,
     * Bounds for eigenvalues using traces, 1980).
     *
     * @param angle in radians, 0 to π
     */
    boolean holdsWithin(double angle) {
        if (!valid) {
            return false;
        }
        double trace = sum[0][0] + sum[1][1] + sum[2][2];
        double axial = Math.sqrt(
                square(sum[2][1] - sum[1][2]) + square(sum[0][2] - sum[2][0]) + square(sum[1][0] - sum[0][1]));
        double mean = trace / 3;
        double spread = square(sum[0][0] - mean)
                + square(sum[1][1] - mean)
                + square(sum[2][2] - mean)
                + (square(sum[0][1] + sum[1][0]) + square(sum[0][2] + sum[2][0]) + square(sum[1][2] + sum[2][1])) / 2;
        double least = mean - Math.sqrt(spread * 2 / 3);
        double lowered =
                Math.sin(Math.min(angle, Math.PI / 2)) * axial + (1 - Math.cos(angle)) * Math.max(0, trace - least);
        return trace - lowered > most;
    }

    private static double square(double value) {
        return value * value;
    }
}
