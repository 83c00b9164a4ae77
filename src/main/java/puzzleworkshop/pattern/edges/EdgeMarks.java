package puzzleworkshop.pattern.edges;

/**
 * A few measures of a curve that a small motion hardly changes: its chord, how far it reaches to either side, and its first
 * waves. They tell nearly all edges apart without a look at their curves.
 */
final class EdgeMarks {

    private static final int WAVES = 5;
    /** Numbers that each edge has; those of many lie one edge after another in one row. */
    static final int COUNT = 3 + 2 * WAVES;

    /** Chord and heights change by at most twice the distance. */
    private static final double SLACK = 2.0;

    private static final double WAVE_SLACK = 1.8;
    private static final double[][] COSINES = cosines();

    private EdgeMarks() {}

    private static double[][] cosines() {
        int points = EdgeShape.POINTS;
        double[][] waves = new double[WAVES][points];
        for (int k = 0; k < WAVES; k++) {
            for (int i = 0; i < points; i++) {
                waves[k][i] = (k == 0 ? 1 : Math.sqrt(2)) * StrictMath.cos(Math.PI * k * (i + 0.5) / points) / points;
            }
        }
        return waves;
    }

    /** Of a curve laid as {@link EdgeShape} lays it. */
    static float[] of(double[] x, double[] y, double chordMm) {
        double up = 0;
        double down = 0;
        float[] found = new float[COUNT];
        for (int i = 0; i < x.length; i++) {
            up = Math.max(up, y[i]);
            down = Math.max(down, -y[i]);
            for (int k = 0; k < WAVES; k++) {
                found[3 + 2 * k] += (float) (x[i] * COSINES[k][i]);
                found[4 + 2 * k] += (float) (y[i] * COSINES[k][i]);
            }
        }
        found[0] = (float) chordMm;
        found[1] = (float) up;
        found[2] = (float) down;
        return found;
    }

    /**
     * Quick: how far apart the first waves of two curves are, squared; infinite only where their distance is above the limit. Chord and heights change by at most twice the
     * distance; the first waves of the curve by no more than the root mean square of what lies between the two (Bessel's
     * inequality). Both with slack for the small turn that is still to come.
     *
     * @param all the other's marks begin at {@code from} in it
     */
    static double apart(float[] mine, float[] all, int from, double limitMm) {
        double slack = SLACK * limitMm;
        if (Math.abs(mine[0] - all[from]) > slack
                || Math.abs(mine[1] - all[from + 1]) > slack
                || Math.abs(mine[2] - all[from + 2]) > slack) {
            return Double.POSITIVE_INFINITY;
        }
        double most = WAVE_SLACK * WAVE_SLACK * limitMm * limitMm;
        double sum = 0;
        for (int i = 3; i < COUNT; i++) {
            double d = mine[i] - all[from + i];
            sum += d * d;
            if (sum > most) {
                return Double.POSITIVE_INFINITY;
            }
        }
        return sum;
    }
}
