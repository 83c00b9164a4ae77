package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import puzzleworkshop.wood.ahead.KnownAhead;
import puzzleworkshop.wood.ahead.WoodBound;
import puzzleworkshop.wood.ahead.WoodPeers;
import puzzleworkshop.wood.play.WoodCase;
import puzzleworkshop.wood.play.WoodDecision;
import puzzleworkshop.wood.play.WoodPlay;
import puzzleworkshop.wood.play.WoodPolicy;
import puzzleworkshop.wood.play.WoodState;

/**
 * Wood over many periods: looking ahead against nearest fit, the rule before, all demand known, and a bound. Ratios are means
 * over the instances; gaps are of the sums, so that what is lost where nothing was to be won counts too. A blank that no board gives counts at the price of the dearest board seen.
 */
public final class WoodBenchmark implements Benchmark {

    private static final int YEARS = 3;
    private static final int TRIES = 30_000;

    /** So many large and as many small cases like the open ones are made, from this seed on; 0: none. */
    private static final int MADE = Integer.getInteger("bench.made", 0);

    /** Settings were chosen on cases below 1001. */
    private static final int FROM = Integer.getInteger("bench.from", 1001);

    /** @param cpu of the thread that decides, which does all the work, at most in a decision */
    private record Line(
            String name,
            long nearest,
            long today,
            long ours,
            long known,
            long bound,
            int stranded,
            double seconds,
            double cpu) {}

    private static List<WoodCase> made() {
        return IntStream.range(FROM, FROM + MADE)
                .boxed()
                .flatMap(seed -> Stream.of(MadePeriods.large(seed), MadePeriods.small(seed)))
                .toList();
    }

    /** The same policy, with the time that the thread works on each decision. */
    private static final class Timed implements WoodPolicy {

        private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
        private final WoodPolicy policy;
        private double most;

        Timed(WoodPolicy policy) {
            this.policy = policy;
        }

        @Override
        public WoodDecision decide(WoodState state) {
            long start = THREADS.getCurrentThreadCpuTime();
            WoodDecision decision = policy.decide(state);
            most = Math.max(most, (THREADS.getCurrentThreadCpuTime() - start) / 1e9);
            return decision;
        }
    }

    @Override
    public String run(Optional<Path> folder, PrintStream out) throws Exception {
        boolean periods = folder.isPresent() || MADE > 0;
        List<WoodCase> cases = folder.isPresent()
                ? PeriodFolder.read(folder.get())
                : MADE > 0
                        ? made()
                        : IntStream.range(0, YEARS).mapToObj(MadeWoodYear::of).toList();
        out.printf(
                "%-14s %9s %9s %9s %9s %9s %9s %9s %8s%n",
                "instance", "nearest", "today", "ours", "known", "bound", "vs today", "stranded", "seconds");
        List<Line> lines = new ArrayList<>();
        for (WoodCase woodCase : cases) {
            Line line = line(woodCase, periods ? WoodPeers.lookAhead() : WoodPeers.lookWeeksAhead(1));
            lines.add(line);
            out.printf(
                    "%-14s %9d %9d %9d %9d %9d %9.4f %9d %8.2f%n",
                    line.name(),
                    line.nearest(),
                    line.today(),
                    line.ours(),
                    line.known(),
                    line.bound(),
                    (double) line.ours() / line.today(),
                    line.stranded(),
                    line.seconds());
        }
        double today = lines.stream().mapToDouble(Line::today).sum();
        double ours = lines.stream().mapToDouble(Line::ours).sum();
        double known = lines.stream().mapToDouble(Line::known).sum();
        double bound = lines.stream().mapToDouble(Line::bound).sum();
        out.printf(
                "%d of %d instances leave nothing to win by knowing what comes%n",
                lines.stream().filter(line -> line.today() <= line.known()).count(), lines.size());
        out.printf(
                "Sums: today %.0f, ours %.0f (%.4f), known %.0f, bound %.0f; more than 2 %% dearer than today on %d,"
                        + " at worst %.3f%n",
                today,
                ours,
                ours / today,
                known,
                bound,
                lines.stream().filter(line -> line.ours() > 1.02 * line.today()).count(),
                lines.stream()
                        .mapToDouble(line -> (double) line.ours() / line.today())
                        .max()
                        .orElse(1));
        return String.format(
                "instances=%d cost_vs_nearest=%.4f cost_vs_today=%.4f gap_closed_percent=%.1f gap_to_bound_percent=%.1f"
                        + " seconds_per_decision=%.2f cpu_seconds_per_decision=%.2f",
                lines.size(),
                lines.stream()
                        .mapToDouble(line -> (double) line.ours() / line.nearest())
                        .average()
                        .orElse(1),
                lines.stream()
                        .mapToDouble(line -> (double) line.ours() / line.today())
                        .average()
                        .orElse(1),
                closed(today, ours, known),
                100 * (ours - bound) / bound,
                lines.stream().mapToDouble(Line::seconds).max().orElse(0),
                lines.stream().mapToDouble(Line::cpu).max().orElse(0));
    }

    /** Where nothing was to be won, all that is lost counts. */
    private static double closed(double today, double ours, double known) {
        if (today > known) {
            return 100 * (today - ours) / (today - known);
        }
        return ours > today ? -100 : 0;
    }

    private static Line line(WoodCase woodCase, WoodPolicy policy) {
        WoodPlay.Result nearest = WoodPlay.play(woodCase, WoodPeers.nearest());
        WoodPlay.Result today = WoodPlay.play(woodCase, WoodPeers.today(woodCase));
        Timed timed = new Timed(policy);
        WoodPlay.Result ours = WoodPlay.play(woodCase, timed);
        long known = woodCase.room() == 0
                ? KnownAhead.leastCost(
                                woodCase, List.of(nearest.decisions(), today.decisions(), ours.decisions()), TRIES, 1)
                        .orElse(Math.min(ours.cost(), today.cost()))
                : Math.min(
                        ours.cost(),
                        WoodPlay.play(woodCase, WoodPeers.knownAhead(woodCase)).cost());
        return new Line(
                woodCase.name(),
                nearest.cost(),
                today.cost(),
                ours.cost(),
                known,
                WoodBound.leastCost(woodCase),
                ours.stranded(),
                ours.seconds().stream().mapToDouble(s -> s).max().orElse(0),
                timed.most);
    }
}
