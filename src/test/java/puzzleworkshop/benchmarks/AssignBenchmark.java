package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.RandomOutlines;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.assign.BoardAssignment;
import puzzleworkshop.geometry.assign.BoardAssignment.Plan;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/** A waiting week: 40 blanks over 300 offcuts together, 2 s, against first come first served and a lower bound. */
public final class AssignBenchmark implements Benchmark {

    private static final int BLANKS = 40;
    private static final int SHEETS = 300;
    private static final int WEEKS = 5;
    private static final UsefulSizes SIZES = UsefulSizes.common();
    private static final double[][] FINISHED = {
        {148, 105}, {210, 148}, {200, 200}, {297, 210}, {297, 210}, {350, 250}, {420, 297}, {500, 350}
    };

    @Override
    public String run(Optional<Path> folder, PrintStream out) throws Exception {
        List<Outline> given = folder.isPresent()
                ? OutlineFolder.read(folder.get()).stream()
                        .map(OutlineFolder.Instance::outline)
                        .toList()
                : List.of();
        out.println(
                "Bounds: Lagrangian relaxation; each board takes the set of blanks that earns most at their prices, of"
                        + " those whose blanks lie on it two by two at any angle; rectangular boards are cut along their"
                        + " edges.");
        out.printf(
                "%-6s %8s %14s %14s %14s %14s %14s %14s %9s%n",
                "week",
                "sheets",
                "new m2 greedy",
                "new m2 ours",
                "new m2 bound",
                "lost m2 greedy",
                "lost m2 ours",
                "lost m2 bound",
                "seconds");
        double seconds = 0;
        double newGreedy = 0;
        double newOurs = 0;
        double lostGreedy = 0;
        double lostOurs = 0;
        double bound = 0;
        int sheets = 0;
        for (int week = 0; week < WEEKS; week++) {
            List<Outline> outlines = given.isEmpty() ? made(week) : given;
            sheets = outlines.size();
            List<Profile> stock =
                    outlines.parallelStream().map(o -> Profile.of(o, SIZES)).toList();
            List<Size> blanks = blanks(week);
            List<Profile> kinds = List.of(Profile.of(Outline.rectangle(Size.mm(800, 600)), SIZES));
            Plan greedy = new BoardAssignment(stock, kinds, blanks, SIZES, Length.ZERO, (b, s) -> null).firstCome();
            long start = System.nanoTime();
            BoardAssignment assignment = new BoardAssignment(stock, kinds, blanks, SIZES, Length.ZERO, (b, s) -> null);
            Plan ours = assignment.together(1_900 - (System.nanoTime() - start) / 1_000_000, week);
            double took = (System.nanoTime() - start) / 1e9;
            double least = assignment.leastValueLost(ours).mm2();
            out.printf(
                    "%-6d %8d %14.3f %14.3f %14.3f %14.4f %14.4f %14.4f %9.2f%n",
                    week,
                    sheets,
                    greedy.newArea().toSquareMetres(),
                    ours.newArea().toSquareMetres(),
                    assignment.leastNewArea().toSquareMetres(),
                    greedy.valueLost().toSquareMetres(),
                    ours.valueLost().toSquareMetres(),
                    least / 1e6,
                    took);
            boolean noMoreBought = ours.newArea().compareTo(greedy.newArea()) <= 0;
            boolean noMoreLost = ours.newArea().compareTo(greedy.newArea()) < 0
                    || ours.valueLost().mm2() <= greedy.valueLost().mm2() + 1;
            if (ours.unplaced().size() > greedy.unplaced().size() || !noMoreBought || !noMoreLost) {
                throw new IllegalStateException("Worse than first come, first served in week " + week);
            }
            seconds = Math.max(seconds, took);
            newGreedy += greedy.newArea().mm2();
            newOurs += ours.newArea().mm2();
            lostGreedy += greedy.valueLost().mm2();
            lostOurs += ours.valueLost().mm2();
            bound += least;
        }
        return String.format(
                "blanks=%d sheets=%d seconds=%.2f new_area_vs_greedy=%.4f value_lost_vs_greedy=%.4f"
                        + " gap_to_bound_percent=%.1f",
                BLANKS,
                sheets,
                seconds,
                newGreedy == 0 ? 1 : newOurs / newGreedy,
                lostOurs / lostGreedy,
                100 * (lostOurs - bound) / bound);
    }

    private static List<Outline> made(int week) {
        RandomOutlines random = new RandomOutlines(40 + week);
        return IntStream.range(0, SHEETS).mapToObj(i -> random.next(i % 5 == 0)).toList();
    }

    private static List<Size> blanks(int week) {
        Random random = new Random(7 + week);
        return IntStream.range(0, BLANKS)
                .mapToObj(i -> {
                    double[] finished = FINISHED[random.nextInt(FINISHED.length)];
                    return Size.mm(finished[0] + 22, finished[1] + 22);
                })
                .toList();
    }
}
