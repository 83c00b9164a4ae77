package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import puzzleworkshop.cutting.trials.SimulatedBoards;

/**
 * Tries until a setting is proven, on simulated boards whose thresholds are hidden: ours against a ladder of fixed steps
 * of a tenth of common practice, staying on a rung while its cuts are good. Two ladders are climbed, from half of common
 * practice and from all of it; the last line names the better one.
 */
public final class TrialsBenchmark implements Benchmark {

    private static final int MATERIALS = 600;
    private static final long SEED = 20261125;

    @Override
    public String run(Optional<Path> folder, PrintStream out) {
        SimulatedBoards.Tally tally = new SimulatedBoards(SEED).compare(MATERIALS);
        double naive = Math.min(tally.meanLadder(), tally.meanHighLadder());
        out.printf(Locale.ROOT, "%-34s %12s %12s %12s%n", "", "mean tries", "median", "worst");
        out.printf(
                Locale.ROOT,
                "%-34s %12.2f %12d %12d%n",
                "ours",
                tally.meanOurs(),
                tally.medianOurs(),
                tally.worstOurs());
        out.printf(
                Locale.ROOT,
                "%-34s %12.2f %12d %12d%n",
                "ladder from half, steps of 10 %",
                tally.meanLadder(),
                tally.medianLadder(),
                tally.worstLadder());
        out.printf(Locale.ROOT, "%-34s %12.2f%n", "ladder from common practice", tally.meanHighLadder());
        out.printf(Locale.ROOT, "%-34s %12.2f%n", "plain bisection", tally.meanBisection());
        out.printf(
                Locale.ROOT,
                "called proven with under 80 good cuts of 100 in truth: ours %.1f %%, bisection %.1f %%%n",
                tally.wrongPercentOurs(),
                tally.wrongPercentBisection());
        out.printf(Locale.ROOT, "%-34s %12.2f%n", "bound: threshold known", tally.meanBound());
        out.printf(
                Locale.ROOT,
                "not proven within %d tries: ours %d, ladder %d; ratio to the better ladder %.3f%n",
                SimulatedBoards.MOST_TRIES,
                tally.unprovenOurs(),
                tally.unprovenLadder(),
                tally.meanOurs() / naive);
        return String.format(
                Locale.ROOT,
                "materials=%d trials_ours=%.2f trials_naive=%.2f trials_bisection=%.2f wrong_proven_percent=%.1f"
                        + " wrong_bisection_percent=%.1f",
                MATERIALS,
                tally.meanOurs(),
                naive,
                tally.meanBisection(),
                tally.wrongPercentOurs(),
                tally.wrongPercentBisection());
    }
}
