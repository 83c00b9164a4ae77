package puzzleworkshop.cutting.settings;

import java.util.Arrays;
import puzzleworkshop.cutting.settings.Trial.Finding;

/**
 * What one may believe about a kind of board after some trials: the line energy that just goes through it, how much more
 * it bears before its edge chars too much, and how much its cuts differ. All three are unknown; a grid holds the
 * probability of each combination and every trial reweighs it (Bayes' rule). Logarithms of energy are used, since boards
 * differ by factors.
 *
 * <p>Assumptions, all common practice: energies that go through differ between boards by about 35 % and from cut to cut
 * by 4 to 8 %; a cut that gets 85 % to 100 % of what it needs hangs by fibres; an edge bears roughly a third more than it
 * needs, stays light over the first third of that, and is black from two thirds beyond it; spread over one more pass a
 * cut needs 4 % more in all but bears a fifth more.
 */
final class EnergyPosterior {

    /** The share of good cuts from which on a setting serves. */
    static final double GOOD_ENOUGH = 0.8;

    private static final double BOARDS_DIFFER = 0.35;
    private static final double[] CUTS_DIFFER = {0.04, 0.06, 0.085};
    private static final double PARTLY_WIDTH = 0.16;
    private static final double ROOM_MEAN = 0.33;
    private static final double ROOM_DIFFERS = 0.18;
    /** Charring is told by eye: so much of the room it may be off. */
    private static final double CHAR_DIFFERS = 0.1;

    private static final double LIGHT_UP_TO = 1 / 3.0;
    private static final double PASS_NEEDS = 0.04;
    private static final double PASS_BEARS = 0.20;
    /** Of a hundred trials two are told or measured wrongly. */
    private static final double MISTOLD = 0.02;

    private static final int NEEDS = 61;
    private static final int ROOMS = 15;
    private static final double NEED_SPAN = 1.6;
    private static final double ROOM_LOW = 0.02;
    private static final double ROOM_HIGH = 0.92;
    /** Combinations less likely than this say nothing. */
    private static final double NOTHING = 1e-6;

    /** What is less likely comes back by no trial any more. */
    private static final double NEVER = 1e-12;

    private final double[] need = new double[NEEDS];
    private final double[] room = new double[ROOMS];
    private final double[][][] weight = new double[NEEDS][ROOMS][CUTS_DIFFER.length];
    /** How much the look of an edge differs from cut to cut, by room and scatter. */
    private final double[][] differs = new double[ROOMS][CUTS_DIFFER.length];
    /** What is believed of each need, whatever the rest. */
    private final double[] inAll = new double[NEEDS];

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
            for (int s = 0; s < CUTS_DIFFER.length; s++) {
                differs[j][s] = Math.hypot(CUTS_DIFFER[s], CHAR_DIFFERS * room[j]);
            }
        }
        for (int i = 0; i < NEEDS; i++) {
            for (int j = 0; j < ROOMS; j++) {
                double a = (need[i] - middle) / BOARDS_DIFFER;
                double b = (room[j] - ROOM_MEAN) / ROOM_DIFFERS;
                for (int s = 0; s < CUTS_DIFFER.length; s++) {
                    // heavy tails: a board may be quite unlike others, and a few trials must be able to say so
                    weight[i][j][s] = (Math.exp(-a * a / 2) + 0.01) * Math.exp(-b * b / 2);
                }
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
            if (inAll[i] < NEVER) {
                for (double[] scatters : weight[i]) {
                    Arrays.fill(scatters, 0);
                }
                continue;
            }
            double over = over(energy, passes, i);
            for (int s = 0; s < CUTS_DIFFER.length; s++) {
                double through = normal(over / CUTS_DIFFER[s]);
                double atLeastPartly = normal((over + PARTLY_WIDTH) / CUTS_DIFFER[s]);
                for (int j = 0; j < ROOMS; j++) {
                    double seen = switch (finding.result()) {
                        // charring is judged at the edge of a piece that came off
                        case THROUGH -> through * charred(finding.charring(), over, passes, j, s);
                        case PARTLY -> atLeastPartly - through;
                        case NOT_THROUGH -> 1 - atLeastPartly;
                    };
                    double likely = MISTOLD + (1 - MISTOLD) * Math.max(0, seen);
                    weight[i][j][s] *= trust == 1 ? likely : Math.pow(likely, trust);
                }
            }
        }
        normalise();
    }

    /** Probability that as many cuts in a row are good as are asked for, on a board on which enough are good in the long run. */
    double goodInARow(double energy, int passes, int cuts) {
        return sum(energy, passes, cuts);
    }

    /** Probability that in the long run at least {@value #GOOD_ENOUGH} of the cuts are good. */
    double serves(double energy, int passes) {
        return sum(energy, passes, 0);
    }

    private double sum(double energy, int passes, int cuts) {
        double sum = 0;
        for (int i = 0; i < NEEDS; i++) {
            double over = over(energy, passes, i);
            if (over < 0 || inAll[i] < NOTHING) {
                continue; // half of the cuts at most go through, or nobody believes in it
            }
            for (int s = 0; s < CUTS_DIFFER.length; s++) {
                double through = normal(over / CUTS_DIFFER[s]);
                for (int j = 0; through >= GOOD_ENOUGH && j < ROOMS; j++) {
                    double good = weight[i][j][s] < NOTHING ? 0 : through - (1 - upTo(1, over, passes, j, s));
                    if (good >= GOOD_ENOUGH) {
                        double row = 1;
                        for (int k = 0; k < cuts; k++) {
                            row *= good;
                        }
                        sum += weight[i][j][s] * row;
                    }
                }
            }
        }
        return sum;
    }

    private double over(double energy, int passes, int i) {
        return Math.log(energy) - need[i] - PASS_NEEDS * (passes - usualPasses);
    }

    /** Probability that the edge looks so. */
    private double charred(int charring, double over, int passes, int j, int s) {
        return switch (charring) {
            case 0, 1 -> upTo(LIGHT_UP_TO, over, passes, j, s);
            case 2 -> upTo(1, over, passes, j, s) - upTo(LIGHT_UP_TO, over, passes, j, s);
            case 3 -> upTo(2 - LIGHT_UP_TO, over, passes, j, s) - upTo(1, over, passes, j, s);
            default -> 1 - upTo(2 - LIGHT_UP_TO, over, passes, j, s);
        };
    }

    /** Probability that the edge takes no more than this share of its room. */
    private double upTo(double share, double over, int passes, int j, int s) {
        double bears = room[j] + PASS_BEARS * (passes - usualPasses);
        return normal((share * Math.max(bears, 0.01) - over) / differs[j][s]);
    }

    private void normalise() {
        double sum = 0;
        for (double[][] rooms : weight) {
            for (double[] scatters : rooms) {
                for (double w : scatters) {
                    sum += w;
                }
            }
        }
        for (int i = 0; i < NEEDS; i++) {
            inAll[i] = 0;
            for (double[] scatters : weight[i]) {
                for (int s = 0; s < scatters.length; s++) {
                    scatters[s] /= sum;
                    inAll[i] += scatters[s];
                }
            }
        }
    }

    /** The normal distribution function by its logistic stand-in, within 0.01 of it: plenty for choosing a try. */
    private static double normal(double x) {
        return 1 / (1 + Math.exp(-x * (1.5976 + 0.07056 * x * x)));
    }
}
