package puzzleworkshop.benchmarks;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.MarkReading;
import puzzleworkshop.geometry.align.MarkReading.Expectation;
import puzzleworkshop.geometry.align.Similarity;

/**
 * Cuts on prints that were stuck a little off, placed by eye and by measured marks: how many stay inside the print, and
 * which overhang would hold 999 of 1,000. Sticking is off by 1.5 mm and 0.5° (common practice; normal errors of which
 * those are two standard deviations, along each axis and in the turn), prints are stretched by 0.1 % (one standard
 * deviation), marks are read with 0.3 mm (one standard deviation along each axis). Readings that are refused are taken
 * again, as at the machine. By eye the file lies where the print was meant to lie.
 */
public final class MeetBenchmark implements Benchmark {

    private static final long SEED = 20261129;
    private static final int CASES = 40_000;
    private static final double SHIFT_MM = 1.5 / 2;
    private static final double TURN = Math.toRadians(0.5) / 2;
    private static final double STRETCH = 0.001;
    private static final double READING_MM = 0.3;
    private static final double OVERHANG_MM = 3;
    private static final double HALF_KERF_MM = 0.075;
    private static final double[][] SIZES = {{148, 105}, {200, 150}, {210, 297}, {300, 200}, {380, 260}};

    private final Random dice = new Random(SEED);
    private int again;

    @Override
    public String run(Optional<Path> folder, PrintStream out) {
        out.printf("%-10s %6s %10s %12s %12s%n", "size", "marks", "placed by", "inside %", "99.9 % mm");
        double[] marks = new double[CASES];
        double[] byHand = new double[CASES];
        for (int round = 0; round < CASES; round++) {
            double[] size = SIZES[round % SIZES.length];
            Similarity truth = Similarity.about(
                    Point.of(size[0] / 2, size[1] / 2),
                    1 + STRETCH * dice.nextGaussian(),
                    TURN * dice.nextGaussian(),
                    SHIFT_MM * dice.nextGaussian(),
                    SHIFT_MM * dice.nextGaussian());
            byHand[round] = need(size, truth, Similarity.NONE);
            marks[round] = need(size, truth, measured(size, truth, 4));
        }
        for (int s = 0; s < SIZES.length; s++) {
            String name = String.format("%.0f × %.0f", SIZES[s][0], SIZES[s][1]);
            line(out, name, "4", "marks", every(marks, s));
            line(out, name, "", "eye", every(byHand, s));
        }
        for (int n = 2; n <= 3; n++) {
            double[] fewer = new double[CASES / 10];
            for (int round = 0; round < fewer.length; round++) {
                double[] size = SIZES[round % SIZES.length];
                Similarity truth = Similarity.about(
                        Point.of(size[0] / 2, size[1] / 2),
                        1 + STRETCH * dice.nextGaussian(),
                        TURN * dice.nextGaussian(),
                        SHIFT_MM * dice.nextGaussian(),
                        SHIFT_MM * dice.nextGaussian());
                fewer[round] = need(size, truth, measured(size, truth, n));
            }
            line(out, "all", Integer.toString(n), "marks", fewer);
        }
        out.printf("readings refused and taken again: %.2f %%%n", 100.0 * again / CASES);
        return String.format(
                "cases=%d inside_percent_marks=%.3f inside_percent_by_hand=%.3f"
                        + " overhang_needed_marks_mm=%.2f overhang_needed_by_hand_mm=%.2f",
                CASES, inside(marks), inside(byHand), quantile(marks), quantile(byHand));
    }

    /** Where the program would cut, from marks in the middle of the overhang at the corners. */
    private Similarity measured(double[] size, Similarity truth, int count) {
        double m = OVERHANG_MM / 2;
        List<Point> drawn = List.of(
                        Point.of(-m, -m),
                        Point.of(size[0] + m, size[1] + m),
                        Point.of(size[0] + m, -m),
                        Point.of(-m, size[1] + m))
                .subList(0, count);
        while (true) {
            List<Point> seen = new ArrayList<>();
            for (Point p : drawn) {
                seen.add(truth.of(p).plus(READING_MM * dice.nextGaussian(), READING_MM * dice.nextGaussian()));
            }
            MarkReading reading = MarkReading.of(drawn, seen, Expectation.USUAL);
            if (reading.isPlaced()) {
                return reading.fit().place();
            }
            again++;
        }
    }

    /** Overhang that would just have done: how far outside the finished size, on the print, the kerf comes. */
    private static double need(double[] size, Similarity truth, Similarity cut) {
        double most = 0;
        for (double[] corner : new double[][] {{0, 0}, {1, 0}, {1, 1}, {0, 1}}) {
            Point hit = truth.backwards(cut.of(Point.of(corner[0] * size[0], corner[1] * size[1])));
            most = Math.max(most, Math.max(-hit.xMm(), hit.xMm() - size[0]));
            most = Math.max(most, Math.max(-hit.yMm(), hit.yMm() - size[1]));
        }
        return most + HALF_KERF_MM;
    }

    private static double[] every(double[] needs, int size) {
        double[] of = new double[needs.length / SIZES.length];
        for (int i = 0; i < of.length; i++) {
            of[i] = needs[i * SIZES.length + size];
        }
        return of;
    }

    private static void line(PrintStream out, String size, String marks, String by, double[] needs) {
        out.printf("%-10s %6s %10s %12.3f %12.2f%n", size, marks, by, inside(needs), quantile(needs));
    }

    private static double inside(double[] needs) {
        return 100.0 * Arrays.stream(needs).filter(need -> need <= OVERHANG_MM).count() / needs.length;
    }

    private static double quantile(double[] needs) {
        double[] sorted = needs.clone();
        Arrays.sort(sorted);
        return sorted[(int) Math.ceil(0.999 * sorted.length) - 1];
    }
}
