package puzzleworkshop.cutting.settings;

import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Result;

/**
 * What one may believe about a kind of board after some trials: the line energy that just goes through it, and how much
 * more it bears before its edge chars too much. Both are unknown; a grid holds the probability of each pair and every
 * trial reweighs it (Bayes' rule). Logarithms of energy are used, since boards differ by factors.
 *
 * <p>Assumptions, all common practice: energies that go through differ between boards by about 35 % and from cut to cut
 * by about 7 %; a cut that gets 85 % to 100 % of what it needs hangs by fibres; an edge bears roughly a third more
 * than it needs; spread over one more pass a cut needs 4 % more in all but bears a fifth more.
 */
final class EnergyPosterior {

    private static final double BOARDS_DIFFER = 0.35;
    private static final double CUTS_DIFFER = 0.075;
    private static final double PARTLY_WIDTH = 0.16;
    private static final double ROOM_MEAN = 0.33;
    private static final double ROOM_DIFFERS = 0.18;
    private static final double CHAR_DIFFERS = 0.07;
    private static final double PASS_NEEDS = 0.04;
    private static final double PASS_BEARS = 0.20;
    /** Of a hundred trials two are told or measured wrongly. */
    private static final double MISTOLD = 0.02;

    private static final int NEEDS = 91;
    private static final int ROOMS = 25;
    private static final double NEED_SPAN = 1.8;
    private static final double ROOM_LOW = -0.25;
    private static final double ROOM_HIGH = 1.15;

    private final double[] need = new double[NEEDS];
    private final double[] room = new double[ROOMS];
    private final double[][] weight = new double[NEEDS][ROOMS];
    private final int usualPasses;

    /**
     * @param usualEnergy J/mm that common practice gives for the kind
     * @param usualPasses in which it is usually given
     */
    EnergyPosterior(double usualEnergy, int usualPasses) {
        this.usualPasses = usualPasses;
        double middle = Math.log(usualEnergy);
        for (int i = 0; i < NEEDS; i++) {
            need[i] = middle - NEED_SPAN + 2 * NEED_SPAN * i / (NEEDS - 1);
        }
        for (int j = 0; j < ROOMS; j++) {
            room[j] = ROOM_LOW + (ROOM_HIGH - ROOM_LOW) * j / (ROOMS - 1);
        }
        for (int i = 0; i < NEEDS; i++) {
            for (int j = 0; j < ROOMS; j++) {
                double a = (need[i] - middle) / BOARDS_DIFFER;
                double b = (room[j] - ROOM_MEAN) / ROOM_DIFFERS;
                // heavy tails: a board may be quite unlike others, and a few trials must be able to say so
                weight[i][j] = (Math.exp(-a * a / 2) + 0.01) * Math.exp(-b * b / 2);
            }
        }
        normalise();
    }

    /**
     * Reweighs by one trial.
     *
     * @param energy J/mm over all passes
     * @param trust 1 for a trial with everything right, less where something else may explain it, 0 for none
     */
    void learn(double energy, int passes, Finding finding, double trust) {
        for (int i = 0; i < NEEDS; i++) {
            double over = over(energy, passes, i);
            double through = through(over);
            double atLeastPartly = normal((over + PARTLY_WIDTH) / CUTS_DIFFER);
            for (int j = 0; j < ROOMS; j++) {
                double burnt = burnt(over, passes, j);
                double seen = switch (finding.result()) {
                    case THROUGH -> through;
                    case PARTLY -> atLeastPartly - through;
                    case NOT_THROUGH -> 1 - atLeastPartly;
                };
                // charring is judged at the edge of a piece that came off
                if (finding.result() == Result.THROUGH) {
                    seen *= finding.isGood() ? 1 - burnt : burnt;
                }
                weight[i][j] *= Math.pow(MISTOLD + (1 - MISTOLD) * Math.max(0, seen), trust);
            }
        }
        normalise();
    }

    /** Probability that as many cuts in a row are good as are asked for. */
    double goodInARow(double energy, int passes, int cuts) {
        double sum = 0;
        for (int i = 0; i < NEEDS; i++) {
            double over = over(energy, passes, i);
            double through = through(over);
            if (through < 1e-4) {
                continue;
            }
            for (int j = 0; j < ROOMS; j++) {
                if (weight[i][j] > 1e-9) {
                    double good = through * (1 - burnt(over, passes, j));
                    double row = good;
                    for (int k = 1; k < cuts; k++) {
                        row *= good;
                    }
                    sum += weight[i][j] * row;
                }
            }
        }
        return sum;
    }

    private double over(double energy, int passes, int i) {
        return Math.log(energy) - need[i] - PASS_NEEDS * (passes - usualPasses);
    }

    private static double through(double over) {
        return normal(over / CUTS_DIFFER);
    }

    private double burnt(double over, int passes, int j) {
        return normal((over - room[j] - PASS_BEARS * (passes - usualPasses)) / CHAR_DIFFERS);
    }

    private void normalise() {
        double sum = 0;
        for (double[] row : weight) {
            for (double w : row) {
                sum += w;
            }
        }
        for (double[] row : weight) {
            for (int j = 0; j < ROOMS; j++) {
                row[j] /= sum;
            }
        }
    }

    /** The normal distribution function by its logistic stand-in, within 0.01 of it: plenty for choosing a try. */
    private static double normal(double x) {
        return 1 / (1 + Math.exp(-x * (1.5976 + 0.07056 * x * x)));
    }
}
