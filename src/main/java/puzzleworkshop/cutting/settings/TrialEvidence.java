package puzzleworkshop.cutting.settings;

import java.util.List;
import puzzleworkshop.machines.Beam;
import puzzleworkshop.measure.Length;

/**
 * What the trials say about one setting. Only trials that were like it count: same passes and air, line energy within
 * {@value #LIKE_PERCENT} %, and a gap that was right as far as it was measured (a cut with the head too high says
 * nothing about speed and power).
 *
 * <p>Rules (common practice): proven after {@value #GOOD_IN_A_ROW} good ones in a row; once proven, doubtful while
 * {@value #BAD_OF_RECENT} or more of the last {@value #RECENT} since then were not good.
 *
 * <p>How often the second rule errs, simulated (TrialEvidenceRulesTest): of proven settings by which 95 of 100 cuts are
 * good, 11 of 100 are called doubtful at some time within the next twenty cuts; by which 80 are good, 75 of 100; by which
 * 50 are good, all but one of 100. Three good ones in a row show no more than 37 % good cuts ({@link SuccessBound}):
 * that is why the bound stands beside the word.
 */
public final class TrialEvidence {

    public static final int GOOD_IN_A_ROW = 3;
    public static final int RECENT = 5;
    public static final int BAD_OF_RECENT = 2;
    public static final double LIKE_PERCENT = 3;
    /** How far a gap may be off before it explains a cut that did not go through (common practice). */
    public static final double GAP_TOLERANCE_MM = 0.5;

    private final Beam beam;
    private final List<Trial> trials;

    /**
     * @param beam of the machine
     * @param trials of one machine on one kind of board, oldest first
     */
    public TrialEvidence(Beam beam, List<Trial> trials) {
        this.beam = beam;
        this.trials = List.copyOf(trials);
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
        for (int i = 0; i < like.size(); i++) {
            row = like.get(i).finding().isGood() ? row + 1 : 0;
            if (row >= GOOD_IN_A_ROW) {
                provenUpTo = i + 1;
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

    /** How sure the cuts so far make us of these parameters, real ones among them; they go on being counted. */
    public SuccessBound bound(CutParameters parameters) {
        List<Trial> like = like(parameters);
        return new SuccessBound(
                (int) like.stream().filter(trial -> trial.finding().isGood()).count(), like.size());
    }

    /** How many good ones there are in a row up to now with these parameters. */
    public int goodInARow(CutParameters parameters) {
        int row = 0;
        for (Trial trial : like(parameters)) {
            row = trial.finding().isGood() ? row + 1 : 0;
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
                .filter(trial -> isLike(trial.parameters(), parameters))
                .toList();
    }

    private boolean isLike(CutParameters a, CutParameters b) {
        double one = a.lineEnergy(beam);
        double other = b.lineEnergy(beam);
        return a.passes() == b.passes()
                && a.airAssist() == b.airAssist()
                && Math.abs(one - other) <= other * LIKE_PERCENT / 100;
    }

    private static CutParameters rightGap(CutParameters parameters, Length gap) {
        return parameters.withGap(gap);
    }
}
