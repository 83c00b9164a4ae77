package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.RandomOutlines;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.BestSheets;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.measure.Size;

/**
 * One blank among 10,000 offcuts, timed; and 40 random blanks on every outline (of the folder, or made here), each
 * answer judged by JTS and by brute force at 1° and 1 mm.
 */
public final class FitBenchmark implements Benchmark {

    private static final long SEED = 20261125;
    private static final int STOCK = 10_000;
    private static final int BLANKS = 40;
    private static final double JUDGES_INSET = 0.002;
    private static final UsefulSizes SIZES = UsefulSizes.common();

    private record Tally(String name, int corners, int fitting, int wrong, int worse, double ours, double brute) {}

    @Override
    public String run(Optional<Path> folder, PrintStream out) throws Exception {
        List<OutlineFolder.Instance> instances = folder.isPresent() ? OutlineFolder.read(folder.get()) : made();
        out.printf(
                "%-24s %8s %8s %6s %6s %12s %12s%n",
                "outline", "corners", "fitting", "wrong", "worse", "ours ms", "judge s");
        List<Tally> tallies = IntStream.range(0, instances.size())
                .parallel()
                .mapToObj(i -> {
                    Tally tally = judge(instances.get(i), new Random(SEED + i));
                    synchronized (out) {
                        out.printf(
                                "%-24s %8d %8d %6d %6d %12.2f %12.1f%n",
                                tally.name,
                                tally.corners,
                                tally.fitting,
                                tally.wrong,
                                tally.worse,
                                tally.ours / BLANKS,
                                tally.brute / 1000);
                    }
                    return tally;
                })
                .toList();
        double[] speed = speed(out);
        return String.format(
                "outlines=%d blanks=%d wrong=%d worse=%d speedup=%.0f ms_per_10000=%.1f",
                instances.size(),
                instances.size() * BLANKS,
                tallies.stream().mapToInt(Tally::wrong).sum(),
                tallies.stream().mapToInt(Tally::worse).sum(),
                speed[0],
                speed[1]);
    }

    private static List<OutlineFolder.Instance> made() {
        RandomOutlines random = new RandomOutlines(SEED);
        List<OutlineFolder.Instance> made = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            Outline outline = random.next(i % 2 == 1);
            made.add(new OutlineFolder.Instance("made " + i, outline.outer(), outline.badAreas()));
        }
        return made;
    }

    private static Tally judge(OutlineFolder.Instance instance, Random random) {
        Outline outline = instance.outline();
        Profile profile = Profile.of(outline, SIZES);
        double reach = outline.bounds().longerSide().mm();
        List<Size> blanks = new ArrayList<>();
        List<Optional<BestSheets.Ranked>> answers = new ArrayList<>();
        long start = System.nanoTime();
        for (int i = 0; i < BLANKS; i++) {
            double w = reach * (0.06 + 0.6 * random.nextDouble());
            Size blank = Size.mm(w, Math.max(10, w * (0.25 + 0.75 * random.nextDouble())));
            blanks.add(blank);
            answers.add(BestSheets.rank(List.of(profile), blank, null, SIZES, 1).stream()
                    .findFirst());
        }
        double ours = (System.nanoTime() - start) / 1e6;
        start = System.nanoTime();
        BruteForce brute = new BruteForce(instance.judge());
        boolean[] wrong = new boolean[BLANKS];
        boolean[] worse = new boolean[BLANKS];
        boolean[] open = new boolean[BLANKS];
        for (int i = 0; i < BLANKS; i++) {
            wrong[i] = answers.get(i).isPresent()
                    && !brute.confirms(blanks.get(i), answers.get(i).get().place(), JUDGES_INSET);
            open[i] = answers.get(i).isEmpty()
                    || answers.get(i).get().rung() < BestSheets.mostRungLeft(profile, blanks.get(i), SIZES);
        }
        for (int degrees = 0; degrees < 180; degrees++) {
            BruteForce.Turned turned = brute.new Turned(degrees);
            for (int i = 0; i < BLANKS; i++) {
                if (open[i]) {
                    List<Placement> places = turned.places(blanks.get(i));
                    if (answers.get(i).isEmpty()) {
                        wrong[i] |= brute.anyConfirmed(places, blanks.get(i));
                    } else {
                        int reached = answers.get(i).get().rung();
                        for (Placement place : brute.confirmed(places, blanks.get(i), 3, random)) {
                            worse[i] |= BestSheets.rungLeft(profile, blanks.get(i), place, SIZES) > reached;
                        }
                    }
                }
            }
        }
        return new Tally(
                instance.name(),
                outline.free().getNumPoints(),
                (int) answers.stream().filter(Optional::isPresent).count(),
                count(wrong),
                count(worse),
                ours,
                (System.nanoTime() - start) / 1e6);
    }

    private static int count(boolean[] marks) {
        int count = 0;
        for (boolean mark : marks) {
            count += mark ? 1 : 0;
        }
        return count;
    }

    /** Speedup against brute force with JTS, and milliseconds for one blank among the stock. */
    private static double[] speed(PrintStream out) {
        RandomOutlines random = new RandomOutlines(SEED + 1);
        List<Outline> outlines =
                IntStream.range(0, STOCK).mapToObj(i -> random.next(false)).toList();
        long start = System.nanoTime();
        List<Profile> stock = outlines.parallelStream()
                .map(outline -> Profile.of(outline, SIZES))
                .toList();
        out.printf("index of %,d outlines, made once as they enter the stock: %.1f s%n", STOCK, seconds(start));
        Random sizes = new Random(SEED);
        List<Size> blanks = IntStream.range(0, 60)
                .mapToObj(i -> {
                    double w = 90 + 300 * sizes.nextDouble();
                    return Size.mm(w, w * (0.6 + 0.4 * sizes.nextDouble()));
                })
                .toList();
        blanks.forEach(blank -> BestSheets.rank(stock, blank, null, SIZES, 1));
        double[] times = blanks.stream()
                .mapToDouble(blank -> {
                    long begin = System.nanoTime();
                    BestSheets.rank(stock, blank, null, SIZES, 1);
                    return (System.nanoTime() - begin) / 1e6;
                })
                .sorted()
                .toArray();
        double mean = IntStream.range(0, times.length)
                .mapToDouble(i -> times[i])
                .average()
                .orElseThrow();
        double brute = IntStream.range(0, 24)
                .mapToDouble(i ->
                        new BruteForce(outlines.get(i * 411).free()).plainNanos(blanks.get(i), 1_000_000_000L) / 1e6)
                .average()
                .orElseThrow();
        out.printf(
                "one blank among %,d: mean %.1f ms, median %.1f, worst of %d %.1f%n",
                STOCK, mean, times[times.length / 2], times.length, times[times.length - 1]);
        out.printf(
                "brute force with JTS, 1 degree and 1 mm, stopped at its first place or after 1 s (which flatters it): "
                        + "%.1f ms a sheet, mean of 24 sheets; so %,.0f s for the stock on one core, %,.0f s on two%n",
                brute, brute * STOCK / 1000, brute * STOCK / 2000);
        return new double[] {brute * STOCK / 2 / mean, mean};
    }

    private static double seconds(long start) {
        return (System.nanoTime() - start) / 1e9;
    }
}
