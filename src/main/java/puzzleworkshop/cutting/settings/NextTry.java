package puzzleworkshop.cutting.settings;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.machines.Beam;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Sentence;

/**
 * The try that is worth making next, and why.
 *
 * <p>Method: of all line energies the one with the best chance of three good cuts in a row that last, by what all trials
 * make one believe about the board ({@link EnergyPosterior}); good ones already made with nearly the same parameters count
 * towards the row. It stays with the usual number of passes; one or two more come into
 * question only once an edge charred, since faster passes burn less. A gap that was off comes
 * before everything else: a head too high loses power, and more energy would hide it.
 *
 * @param parameters to dial in, always within the machine's limits
 * @param lineEnergy J/mm of these parameters
 * @param reason in a sentence
 * @param setGapFirst whether the gap must be set before the try
 */
public record NextTry(CutParameters parameters, double lineEnergy, Sentence reason, boolean setGapFirst) {

    private static final int MORE_PASSES = 2;
    private static final double STEP = 1.025;
    private static final double SPAN = 5;
    /** Each extra pass takes its time: only for a clearly better chance. */
    private static final double EXTRA_PASS_WORTH = 0.9;

    /** The next try after these trials, or none when the parameters in use are proven. */
    public static Optional<NextTry> after(
            Machine machine, BoardKind board, TrialEvidence evidence, CutParameters current) {
        if (evidence.stateOf(current) == SettingState.PROVEN) {
            return Optional.empty();
        }
        return Optional.of(propose(machine, board, evidence));
    }

    /** Where the trials of a board begin that nobody has cut here yet; until then it is what the board's files and times are made with. */
    static CutParameters first(Machine machine, BoardKind board) {
        return propose(machine, board, new TrialEvidence(machine, board, List.of()))
                .parameters();
    }

    private static NextTry propose(Machine machine, BoardKind board, TrialEvidence evidence) {
        Beam beam = machine.beam();
        double usual = CommonPractice.energyFor(board);
        int usualPasses = evidence.usualPasses();
        EnergyPosterior belief = evidence.belief();
        CutParameters best = null;
        double bestScore = -1;
        int morePasses = Math.min(morePasses(evidence, usualPasses), CutParameters.MOST_PASSES - usualPasses);
        for (int extra = 0; extra <= morePasses; extra++) {
            int passes = usualPasses + extra;
            for (double energy = usual / SPAN; energy <= usual * SPAN; energy *= STEP) {
                CutParameters dialled = CommonPractice.dial(machine, energy, passes, beam.lensGap());
                double score = score(belief, evidence, beam, dialled, passes, extra);
                if (score > bestScore) {
                    bestScore = score;
                    best = dialled;
                }
            }
            for (Trial trial : evidence.trials()) {
                CutParameters again = trial.parameters().withGap(beam.lensGap());
                if (again.passes() == passes && again.airAssist() && within(machine, again)) {
                    double score = score(belief, evidence, beam, again, passes, extra);
                    if (score >= bestScore) {
                        bestScore = score;
                        best = again;
                    }
                }
            }
        }
        CutParameters chosen = best == null ? strongest(machine, usualPasses) : best;
        return explained(chosen, machine, board, evidence);
    }

    /** One more than the most passes, from the usual ones on, in which an edge charred. */
    private static int morePasses(TrialEvidence evidence, int usualPasses) {
        int more = 0;
        for (Trial trial : evidence.trials()) {
            int extra = trial.parameters().passes() - usualPasses;
            if (extra >= 0 && trial.gapWasRight() && trial.finding().charring() > Finding.ACCEPTABLE_CHARRING) {
                more = Math.max(more, extra + 1);
            }
        }
        return Math.min(more, MORE_PASSES);
    }

    private static double score(
            EnergyPosterior belief, TrialEvidence evidence, Beam beam, CutParameters dialled, int passes, int extra) {
        double energy = dialled.lineEnergy(beam);
        if (dialled.passes() != passes) {
            return -1;
        }
        int missing = Math.max(1, TrialEvidence.GOOD_IN_A_ROW - evidence.goodInARow(dialled));
        return belief.goodInARow(energy, passes, missing) * Math.pow(EXTRA_PASS_WORTH, extra);
    }

    private static boolean within(Machine machine, CutParameters parameters) {
        return parameters.speed().compareTo(machine.motion().maxCut()) <= 0;
    }

    /** When every energy that may serve is out of reach: all that the machine can give. */
    private static CutParameters strongest(Machine machine, int passes) {
        int most = Math.min(CutParameters.MOST_PASSES, passes + MORE_PASSES);
        double energy = machine.beam().powerWatts() * most / CommonPractice.SLOWEST.mmPerSecond();
        return CommonPractice.dial(machine, energy, most, machine.beam().lensGap());
    }

    private static NextTry explained(CutParameters next, Machine machine, BoardKind board, TrialEvidence evidence) {
        Beam beam = machine.beam();
        double energy = next.lineEnergy(beam);
        List<Trial> trials = evidence.trials();
        if (trials.isEmpty()) {
            return new NextTry(
                    next,
                    energy,
                    Sentence.of("cutting.next.first", board.thickness(), CommonPractice.energyFor(board), energy),
                    false);
        }
        Trial last = trials.getLast();
        CutParameters was = last.parameters();
        double lastEnergy = was.lineEnergy(beam);
        if (!last.gapWasRight() && !last.finding().isGood()) {
            String key = (last.gapErrorMm() > 0 ? "cutting.next.gap.high" : "cutting.next.gap.low")
                    + (last.finding().result() == Result.THROUGH ? ".charred" : "");
            return new NextTry(
                    next,
                    energy,
                    Sentence.of(
                            key,
                            was.passes(),
                            lastEnergy,
                            Length.mm(Math.abs(last.gapErrorMm())),
                            beam.lensGap(),
                            energy),
                    true);
        }
        if (!was.airAssist() && !last.finding().isGood()) {
            return new NextTry(next, energy, Sentence.of("cutting.next.air", lastEnergy, energy), false);
        }
        int row = evidence.goodInARow(next);
        if (row > 0 && last.finding().isGood()) {
            boolean same = Math.abs(energy - lastEnergy) <= lastEnergy * TrialEvidence.LIKE_PERCENT / 100;
            return new NextTry(
                    next,
                    energy,
                    same
                            ? Sentence.of("cutting.next.again", energy, row)
                            : Sentence.of("cutting.next.middle", lastEnergy, energy),
                    false);
        }
        EnergyInterval bracket = EnergyInterval.of(trials, beam, next.passes());
        return new NextTry(next, energy, moved(next, energy, was, lastEnergy, last.finding(), bracket), false);
    }

    private static Sentence moved(
            CutParameters next,
            double energy,
            CutParameters was,
            double lastEnergy,
            Finding seen,
            EnergyInterval bracket) {
        boolean charred = seen.charring() > Finding.ACCEPTABLE_CHARRING;
        if (next.passes() > was.passes()) {
            return Sentence.of(
                    charred ? "cutting.next.passes.charred" : "cutting.next.passes.more",
                    lastEnergy,
                    seen.charring(),
                    next.passes(),
                    energy / next.passes(),
                    energy);
        }
        if (bracket.notThrough().isPresent() && bracket.through().isPresent() && bracket.holds(energy)) {
            return Sentence.of(
                    "cutting.next.between",
                    bracket.notThrough().getAsDouble(),
                    bracket.through().getAsDouble(),
                    energy);
        }
        if (seen.result() != Result.THROUGH) {
            return Sentence.of(
                    seen.result() == Result.PARTLY ? "cutting.next.more.partly" : "cutting.next.more.not",
                    was.passes(),
                    lastEnergy,
                    energy);
        }
        return Sentence.of(
                charred ? "cutting.next.less.charred" : "cutting.next.other", lastEnergy, seen.charring(), energy);
    }
}
