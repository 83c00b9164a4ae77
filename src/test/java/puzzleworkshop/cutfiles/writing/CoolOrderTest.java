package puzzleworkshop.cutfiles.writing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShapes;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternMaker;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CoolOrderTest {

    private static final PatternSpec PLAIN = PatternSpec.of(Size.mm(264, 198), new PieceGrid(8, 6), 7);

    /** The judge of heat sums point sources along every line; the order is found from meetings of lines alone. */
    @ParameterizedTest
    @EnumSource(CutStyle.class)
    void heat_where_the_beam_arrives_falls_to_less_than_half_and_the_time_grows_by_less_than_three_percent(
            CutStyle style) {
        CutPattern pattern = PatternMaker.make(PLAIN.withStyle(style));
        List<CurvePath> before = CutPlan.beforeCooling(pattern.inner(), List.of(pattern.outline()));
        List<CurvePath> after = plan(pattern).inOrder();
        assertThat(peak(after, CutPace.USUAL)).isLessThan(peak(before, CutPace.USUAL) / 2);
        assertThat(CutHeat.seconds(after, CutPace.USUAL)).isLessThan(CutHeat.seconds(before, CutPace.USUAL) * 1.03);
    }

    /** Two passes with a pause, and six without one: the line cut last is near in time to the one cut first. */
    @Test
    void
            the_order_is_cooler_at_the_pace_of_its_own_job_than_the_usual_one_and_stays_within_three_percent_of_the_time() {
        CutPattern pattern = PatternMaker.make(PLAIN);
        List<CurvePath> shortest = CutPlan.beforeCooling(pattern.inner(), List.of(pattern.outline()));
        for (CutPace pace : List.of(new CutPace(15, 100, 2, 10, 1.4, 3), new CutPace(40, 400, 6, 0, 0.5, 3))) {
            List<CurvePath> own = planAt(pattern, pace);
            assertThat(peak(own, pace)).isLessThan(0.9 * peak(planAt(pattern, CutPace.USUAL), pace));
            assertThat(CutHeat.seconds(own, pace)).isLessThan(CutHeat.seconds(shortest, pace) * 1.03);
        }
        CutPace hardlyFasterBetween = new CutPace(50, 100, 1, 0, 0.4, 3);
        assertThat(CutHeat.seconds(planAt(pattern, hardlyFasterBetween), hardlyFasterBetween))
                .isLessThan(CutHeat.seconds(shortest, hardlyFasterBetween) * 1.03);
    }

    /** A cross of two lines: from the middle of the first to its end, over to the second, and half of that. */
    @Test
    void when_the_beam_comes_back_is_known_to_a_step() {
        CurvePath first = CurvePath.through(List.of(Point.of(0, 50), Point.of(150, 50)), false);
        CurvePath second = CurvePath.through(List.of(Point.of(75, 0), Point.of(75, 100)), false);
        CutPace pace = new CutPace(3, 60, 1, 0, 4, 3);
        // places up to 4 mm apart count as met: (1.5, 2.5) mm or so before and after the crossing
        double crossing = 75 / 3.0 + Math.hypot(75, 50) / 60 + 50 / 3.0;
        assertThat(CutHeat.of(List.of(first, second), pace).soonestSeconds())
                .isBetween(crossing - (4 * Math.sqrt(2) + 1) / 3, crossing);
    }

    @Test
    void in_a_second_pass_the_line_cut_last_is_still_warm_for_the_one_cut_first() {
        CurvePath first = CurvePath.through(List.of(Point.of(75, 0), Point.of(75, 100)), false);
        CurvePath second = CurvePath.through(List.of(Point.of(0, 50), Point.of(150, 50)), false);
        CutPace once = new CutPace(20, 200, 1, 0, 4, 3);
        CutPace twice = new CutPace(20, 200, 2, 0, 4, 3);
        CutPace twiceAfterAPause = new CutPace(20, 200, 2, 60, 4, 3);
        double warm = peak(List.of(first, second), twice);
        assertThat(warm).isGreaterThan(1.2 * peak(List.of(first, second), once));
        assertThat(peak(List.of(first, second), twiceAfterAPause)).isLessThan(warm);
    }

    @Test
    void every_line_is_cut_once_and_the_outline_last() {
        CutPattern pattern =
                PatternMaker.make(PLAIN.withShapes(List.of(PersonalShapes.heart(Point.of(120, 85), Length.mm(55)))));
        CutPlan plan = plan(pattern);
        assertThat(plan.inner()).hasSameSizeAs(pattern.inner());
        assertThat(ends(plan.inner())).isEqualTo(ends(pattern.inner()));
        assertThat(plan.inOrder().getLast().signedAreaMm2()).isNotZero();
        assertThat(plan.inner().stream().mapToDouble(CurvePath::lengthMm).sum())
                .isCloseTo(pattern.innerLengthMm(), within(1e-6));
    }

    @Test
    void no_piece_comes_loose_before_all_lines_of_one_way_are_cut() {
        List<CurvePath> inner = plan(PatternMaker.make(PLAIN)).inner();
        boolean across = isAcross(inner.getFirst());
        int changes = 0;
        for (CurvePath line : inner) {
            if (isAcross(line) != across) {
                changes++;
                across = !across;
            }
        }
        assertThat(changes).isEqualTo(1);
    }

    @Test
    void the_same_lines_get_the_same_order() {
        CutPattern pattern = PatternMaker.make(PLAIN);
        assertThat(plan(pattern)).isEqualTo(plan(pattern));
    }

    /** A long line in a plate after 30 s: e/(rho c h sqrt(4 pi alpha t)) exp(-t/tau), the point sources integrated along it. */
    @Test
    void a_line_crossed_after_half_a_minute_is_as_warm_as_the_closed_form_says() {
        CurvePath first = CurvePath.through(List.of(Point.of(0, 50), Point.of(150, 50)), false);
        CurvePath second = CurvePath.through(List.of(Point.of(75, 0), Point.of(75, 100)), false);
        // 75 mm to the crossing on the first line, 75 mm more, the way over, 50 mm on the second
        double gone = 75 / 5.0 + Math.hypot(75, 50) / 100 + 50 / 5.0;
        double expected = 4.0 / 3 / (6e-7 * 1600 * 3) / Math.sqrt(4 * Math.PI * 0.16 * gone) * Math.exp(-gone / 40);
        assertThat(peak(List.of(first, second), CutPace.USUAL)).isCloseTo(expected, within(0.08 * expected));
    }

    private static double peak(List<CurvePath> inOrder, CutPace pace) {
        return CutHeat.of(inOrder, pace).peakKelvin();
    }

    private static List<CurvePath> planAt(CutPattern pattern, CutPace pace) {
        return pattern.plan(CutPlan.Sequence.INNER_FIRST, pace).inOrder();
    }

    private static CutPlan plan(CutPattern pattern) {
        return CutPlan.of("x", pattern.inner(), List.of(pattern.outline()), CutPlan.Sequence.INNER_FIRST);
    }

    private static boolean isAcross(CurvePath line) {
        return Math.abs(line.end().xMm() - line.start().xMm())
                > Math.abs(line.end().yMm() - line.start().yMm());
    }

    private static Set<Set<Point>> ends(List<CurvePath> lines) {
        Set<Set<Point>> ends = new HashSet<>();
        lines.forEach(line -> ends.add(new HashSet<>(List.of(line.start(), line.end()))));
        return ends;
    }
}
