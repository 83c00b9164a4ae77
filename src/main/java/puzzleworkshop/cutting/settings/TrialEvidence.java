package puzzleworkshop.cutting.settings;

import java.util.List;
import puzzleworkshop.machines.Beam;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;

/**
 * What the trials say about one setting. Only trials that were like it count: same passes and air, line energy within
 * {@value #LIKE_PERCENT} %, and a gap that was right as far as it was measured (a cut with the head too high says
 * nothing about speed and power). In a row counts what lies within {@value #NEAR_PERCENT} %: a good cut with a little more
 * or less speaks for the one between.
 *
 * <p>Proven after good ones in a row, as many as it takes until all trials together make it likely that at least 80 of
 * 100 cuts will be good ({@link EnergyPosterior}): two where that is {@value #SURE_AFTER_TWO} likely, three where it is
 * {@value #SURE_AFTER_THREE}, {@value #ROW_THAT_PROVES} in any case. Benchmark {@code trials}: fewer tries than three in a
 * row by bisection, and less than half as often proven wrongly. Once proven, doubtful while
 * {@value #BAD_OF_RECENT} or more of the last {@value #RECENT} since then were not good.
 *
 * <p>How often the second rule errs, simulated (TrialEvidenceRulesTest): of proven settings by which 95 of 100 cuts are
 * good, 11 of 100 are called doubtful at some time within the next twenty cuts; by which 80 are good, 75 of 100; by which
 * 50 are good, all but one of 100. Three good ones in a row show no more than 37 % good cuts ({@link SuccessBound}):
 * that is why the bound stands beside the word.
 */
public final class TrialEvidence {

    /** As many are usually enough. */
    public static final int GOOD_IN_A_ROW = 3;

    /** As many prove a setting whatever else is believed. */
    public static final int ROW_THAT_PROVES = 5;

    static final double SURE_AFTER_TWO = 0.88;
    static final double SURE_AFTER_THREE = 0.65;
    static final double NEAR_PERCENT = 12;
    public static final int RECENT = 5;
    public static final int BAD_OF_RECENT = 2;
    public static final double LIKE_PERCENT = 3;
    /** How far a gap may be off before it explains a cut that did not go through (common practice). */
    public static final double GAP_TOLERANCE_MM = 0.5;

    /** A failed cut with a wrong gap says something about the energy, but not much. */
    private static final double TRUST_WITH_WRONG_GAP = 0.1;

    private static final double TRUST_WITHOUT_AIR = 0.3;

    private final Beam beam;
    private final int usualPasses;
    private final BoardKind board;
    private final List<Trial> trials;
    /** By trial: how likely its parameters served as things stood then. */
    private final double[] served;

    private final EnergyPosterior soFar;
    private int learned;

    /** @param trials of one machine on one kind of board, oldest first */
    public TrialEvidence(Machine machine, BoardKind board, List<Trial> trials) {
        this.beam = machine.beam();
        this.board = board;
        double usual = CommonPractice.energyFor(board);
        this.usualPasses = CommonPractice.dial(machine, usual, CommonPractice.passesFor(usual), beam.lensGap())
                .passes();
        this.trials = List.copyOf(trials);
        this.served = new double[this.trials.size()];
        this.soFar = nothingTried();
    }

    /** What may be believed before the first trial. */
    private EnergyPosterior nothingTried() {
        return new EnergyPosterior(CommonPractice.energyFor(board), usualPasses());
    }

    int usualPasses() {
        return usualPasses;
    }

    /** What may be believed after all trials. */
    EnergyPosterior belief() {
        EnergyPosterior belief = nothingTried();
        trials.forEach(trial -> learn(belief, trial));
        return belief;
    }

    private void learn(EnergyPosterior belief, Trial trial) {
        belief.learn(trial.parameters().lineEnergy(beam), trial.parameters().passes(), trial.finding(), trust(trial));
    }

    private static double trust(Trial trial) {
        if (!trial.gapWasRight()) {
            return trial.finding().result() == Trial.Result.THROUGH ? 0 : TRUST_WITH_WRONG_GAP;
        }
        return trial.parameters().airAssist() ? 1 : TRUST_WITHOUT_AIR;
    }

    private double served(int trial) {
        while (learned <= trial) {
            Trial next = trials.get(learned);
            CutParameters made = next.parameters();
            learn(soFar, next);
            served[learned] = next.finding().isGood() ? soFar.serves(made.lineEnergy(beam), made.passes()) : 0;
            learned++;
        }
        return served[trial];
    }

    public List<Trial> trials() {
        return trials;
    }

    public Beam beam() {
        return beam;
    }

    public SettingState stateOf(CutParameters parameters) {
        if (trials.isEmpty()) {
            return SettingState.UNTRIED;
        }
        List<Trial> like = like(parameters);
        int provenUpTo = 0;
        int row = 0;
        int seen = 0;
        for (int i = 0; i < trials.size(); i++) {
            Trial trial = trials.get(i);
            if (trial.gapWasRight() && isWithin(trial.parameters(), parameters, NEAR_PERCENT)) {
                row = trial.finding().isGood() ? row + 1 : 0;
                boolean isLike = isWithin(trial.parameters(), parameters, LIKE_PERCENT);
                seen += isLike ? 1 : 0;
                if (isLike && proves(row, i)) {
                    provenUpTo = seen;
                }
            }
        }
        if (provenUpTo == 0) {
            return SettingState.TRYING;
        }
        long badSince = like.subList(Math.max(provenUpTo, like.size() - RECENT), like.size()).stream()
                .filter(trial -> !trial.finding().isGood())
                .count();
        return badSince >= BAD_OF_RECENT ? SettingState.DOUBTFUL : SettingState.PROVEN;
    }

    private boolean proves(int row, int trial) {
        return row >= ROW_THAT_PROVES
                || row >= GOOD_IN_A_ROW && served(trial) >= SURE_AFTER_THREE
                || row == GOOD_IN_A_ROW - 1 && served(trial) >= SURE_AFTER_TWO;
    }

    /** How sure the cuts so far make us of these parameters, real ones among them; they go on being counted. */
    public SuccessBound bound(CutParameters parameters) {
        List<Trial> like = like(parameters);
        return new SuccessBound(
                (int) like.stream().filter(trial -> trial.finding().isGood()).count(), like.size());
    }

    /** How many good ones there are in a row up to now with these parameters or nearly these. */
    public int goodInARow(CutParameters parameters) {
        int row = 0;
        for (Trial trial : trials) {
            if (trial.gapWasRight() && isWithin(trial.parameters(), parameters, NEAR_PERCENT)) {
                row = trial.finding().isGood() ? row + 1 : 0;
            }
        }
        return row;
    }

    /**
     * The parameters to cut with, as the trials stand: those proven last, else those of the latest good trial, else the
     * given ones.
     */
    public CutParameters best(CutParameters otherwise) {
        for (int i = trials.size() - 1; i >= 0; i--) {
            if (stateOf(trials.get(i).parameters()) == SettingState.PROVEN) {
                return rightGap(trials.get(i).parameters(), otherwise.gap());
            }
        }
        for (int i = trials.size() - 1; i >= 0; i--) {
            Trial trial = trials.get(i);
            if (trial.finding().isGood() && trial.gapWasRight() && goodInARow(trial.parameters()) > 0) {
                return rightGap(trial.parameters(), otherwise.gap());
            }
        }
        return otherwise;
    }

    List<Trial> like(CutParameters parameters) {
        return trials.stream()
                .filter(Trial::gapWasRight)
                .filter(trial -> isWithin(trial.parameters(), parameters, LIKE_PERCENT))
                .toList();
    }

    private boolean isWithin(CutParameters a, CutParameters b, double percent) {
        double one = a.lineEnergy(beam);
        double other = b.lineEnergy(beam);
        return a.passes() == b.passes()
                && a.airAssist() == b.airAssist()
                && Math.abs(one - other) <= other * percent / 100;
    }

    private static CutParameters rightGap(CutParameters parameters, Length gap) {
        return parameters.withGap(gap);
    }
}
