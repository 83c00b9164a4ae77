package puzzleworkshop.geometry.align;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.MarkReading.Expectation;
import puzzleworkshop.geometry.align.MarkReading.Verdict;
import puzzleworkshop.geometry.path.CurvePath;

@DisplayNameGeneration(ReplaceUnderscores.class)
class MarkReadingTest {

    private static final List<Point> DRAWN =
            List.of(Point.of(-1.5, -1.5), Point.of(201.5, -1.5), Point.of(201.5, 301.5), Point.of(-1.5, 301.5));
    private static final Expectation USUAL = Expectation.USUAL;
    private final Random dice = new Random(14);

    @Test
    void good_readings_are_believed_in_998_of_1000() {
        int believed = 0;
        for (int round = 0; round < 3000; round++) {
            if (MarkReading.of(DRAWN, seen(DRAWN, p -> p), USUAL).isPlaced()) {
                believed++;
            }
        }
        assertThat(believed / 3000.0).as("seed 14").isBetween(0.996, 1.0);
    }

    @Test
    void two_marks_in_each_others_place_are_named() {
        for (int n = 2; n <= 4; n++) {
            List<Point> drawn = DRAWN.subList(0, n);
            List<Point> seen = seen(drawn, p -> p);
            Collections.swap(seen, 0, 1);
            MarkReading reading = MarkReading.of(drawn, seen, USUAL);
            assertThat(reading.verdict()).as("%d marks", n).isEqualTo(Verdict.EXCHANGED);
            assertThat(reading.concerned()).containsExactly(0, 1);
        }
    }

    @Test
    void mirrored_axes_exchanged_axes_and_inches_are_recognised() {
        for (int n = 3; n <= 4; n++) {
            List<Point> drawn = DRAWN.subList(0, n);
            assertThat(of(drawn, p -> Point.of(400 - p.xMm(), p.yMm()))).isEqualTo(Verdict.MIRRORED);
            assertThat(of(drawn, p -> Point.of(p.xMm(), 400 - p.yMm()))).isEqualTo(Verdict.MIRRORED);
            assertThat(of(drawn, p -> Point.of(p.yMm(), p.xMm()))).isEqualTo(Verdict.AXES_EXCHANGED);
        }
        for (int n = 2; n <= 4; n++) {
            List<Point> inches = DRAWN.subList(0, n).stream()
                    .map(p -> Point.of((p.xMm() + 40) / 25.4, (p.yMm() + 40) / 25.4))
                    .toList();
            assertThat(MarkReading.of(DRAWN.subList(0, n), inches, USUAL).verdict())
                    .isEqualTo(Verdict.OTHER_UNIT);
        }
    }

    @Test
    void the_misread_one_of_four_is_named() {
        int named = 0;
        int wrong = 0;
        int missed = 0;
        for (int round = 0; round < 1000; round++) {
            List<Point> seen = seen(DRAWN, p -> p);
            int which = dice.nextInt(4);
            double angle = 2 * Math.PI * dice.nextDouble();
            Point p = seen.get(which);
            seen.set(which, p.plus(10 * Math.cos(angle), 10 * Math.sin(angle)));
            MarkReading reading = MarkReading.of(DRAWN, seen, USUAL);
            if (reading.verdict() == Verdict.ONE_MISREAD) {
                named += reading.concerned().equals(List.of(which)) ? 1 : 0;
                wrong += reading.concerned().equals(List.of(which)) ? 0 : 1;
            }
            missed += reading.isPlaced() ? 1 : 0;
        }
        assertThat(missed).as("a mark 10 mm off is never believed, seed 14").isZero();
        assertThat(wrong).as("seed 14").isZero();
        assertThat(named).as("seed 14").isGreaterThan(950);
    }

    @Test
    void what_no_paper_does_is_refused() {
        assertThat(of(DRAWN, p -> Point.of(p.xMm() * 1.05, p.yMm() * 1.05))).isEqualTo(Verdict.IMPOSSIBLE);
        List<Point> typedTwice = seen(DRAWN, p -> p);
        typedTwice.set(2, typedTwice.get(1));
        MarkReading reading = MarkReading.of(DRAWN, typedTwice, USUAL);
        assertThat(reading.verdict()).isEqualTo(Verdict.IMPOSSIBLE);
        assertThat(reading.concerned()).containsExactly(1, 2);
    }

    /** A map stretched by 1 % in x only and skewed by 8 mrad: what was put in is found within its deviation. */
    @Test
    void a_print_out_of_square_is_measured_and_told() {
        Expectation fine = new Expectation(0.02, 0.003, USUAL.mostTurn());
        List<Point> seen = DRAWN.stream()
                .map(p -> Point.of(1.0012 * p.xMm() + 0.0008 * p.yMm(), p.yMm()))
                .toList();
        MarkReading reading = MarkReading.of(DRAWN, seen, fine);
        assertThat(reading.shear()).isPresent();
        assertThat(reading.shear().get().uneven()).isEqualTo(0.0012, within(3e-6));
        assertThat(reading.shear().get().skew()).isEqualTo(0.0008, within(3e-6));
        assertThat(reading.shear().get().isReal()).isTrue();
    }

    @Test
    void an_even_print_is_called_out_of_square_once_in_some_hundreds_of_times() {
        int real = 0;
        for (int round = 0; round < 5000; round++) {
            List<Point> seen = seen(DRAWN, p -> p);
            if (ShearCheck.of(DRAWN, seen, SimilarityFit.of(DRAWN, seen).place(), 0.3)
                    .isReal()) {
                real++;
            }
        }
        // normal distribution: two numbers, each beyond 3.3 deviations in 0.097 % of cases
        assertThat(real / 5000.0).as("seed 14").isBetween(0.0002, 0.005);
    }

    @Test
    void a_cut_at_the_measured_place_lies_inside_the_print_by_proof() {
        CurvePath outline = CurvePath.through(
                List.of(Point.of(0, 0), Point.of(200, 0), Point.of(200, 300), Point.of(0, 300)), true);
        List<Point> seen = seen(DRAWN, p -> p);
        SimilarityFit fit = SimilarityFit.of(DRAWN, seen);
        var wide = new InsidePrint.Question(new Bounds(-3, -3, 203, 303), 0.15, 0.3, 0.999, 0.05, true);
        InsidePrint proof = InsidePrint.of(outline, fit, wide);
        assertThat(proof.inside()).isTrue();
        // at a corner: 0.3·√(1/4 + 1/4·(200²+300²)/(203²+303²)) · √(−2 ln 0.001), closed form
        double unsure = 0.3
                * Math.sqrt(0.25 + 0.25 * (200 * 200 + 300 * 300) / (203.0 * 203 + 303 * 303))
                * Math.sqrt(-2 * Math.log(0.001));
        assertThat(proof.uncertainty()).isEqualTo(unsure, within(1e-9));
        assertThat(proof.spare()).isEqualTo(3 * fit.place().stretch() - 0.075 - unsure - 0.05 - 0.01, within(1e-6));
        var narrow = new InsidePrint.Question(new Bounds(-0.5, -0.5, 200.5, 300.5), 0.15, 0.3, 0.999, 0.05, true);
        assertThat(InsidePrint.of(outline, fit, narrow).inside()).isFalse();
    }

    /** Clopper and Pearson 1934 for n of n, the same formula as Wilks's: 0.05^(1/n). */
    @Test
    void the_needed_overhang_says_how_much_it_covers() {
        assertThat(NeededOverhang.of(Collections.nCopies(19, 1.0))).isEmpty();
        assertThat(NeededOverhang.of(Collections.nCopies(29, 1.0)).get().covered())
                .isEqualTo(0.9019, within(5e-5));
        assertThat(NeededOverhang.of(Collections.nCopies(59, 1.0)).get().covered())
                .isEqualTo(0.9505, within(5e-5));
    }

    private Verdict of(List<Point> drawn, UnaryOperator<Point> machine) {
        return MarkReading.of(drawn, seen(drawn, machine), USUAL).verdict();
    }

    /** Laid a little shifted and turned, stretched as paper is, read with 0.3 mm of error. */
    private List<Point> seen(List<Point> drawn, UnaryOperator<Point> machine) {
        Similarity truth = Similarity.about(
                Point.of(100, 150),
                1 + 0.002 * dice.nextGaussian(),
                0.01 * dice.nextGaussian(),
                40 + dice.nextGaussian(),
                30 + dice.nextGaussian());
        List<Point> seen = new ArrayList<>();
        for (Point p : drawn) {
            Point q = machine.apply(truth.of(p));
            seen.add(q.plus(0.3 * dice.nextGaussian(), 0.3 * dice.nextGaussian()));
        }
        return seen;
    }
}
