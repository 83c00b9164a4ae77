package puzzleworkshop.pattern.mesh;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.BruteForceLikeness;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.JtsLines;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShapes;
import puzzleworkshop.pattern.PieceGrid;

@Tag("slow")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class UnlikeLinesTest {

    /** The judge is brute force over all pairs of edges, which shares no code with the maker. */
    @ParameterizedTest
    @EnumSource(CutStyle.class)
    void no_two_inner_edges_are_alike_within_what_the_kerf_leaves(CutStyle style) {
        CutPattern pattern = PatternMaker.make(
                PatternSpec.of(Size.mm(240, 180), new PieceGrid(12, 9), 17).withStyle(style));
        BruteForceLikeness.Found found = BruteForceLikeness.of(pattern.inner(), pattern.outline(), 0.2, 0.25);
        assertThat(found.edges()).isEqualTo(12 * 8 + 9 * 11);
        assertThat(found.alike()).isZero();
        assertThat(found.closestMm()).isGreaterThan(0.2);
        assertThat(JtsLines.crossings(pattern)).isZero();
        assertThat(JtsLines.doubled(pattern)).isZero();
    }

    /** A wide cut leaves much play; brute force says whether the edges differ by more, and the pattern says the same. */
    @Test
    void with_a_wide_kerf_edges_that_differ_by_more_are_not_called_alike() {
        PatternSpec spec =
                PatternSpec.of(Size.mm(360, 270), new PieceGrid(8, 6), 17).withKerf(Length.mm(0.5));
        CutPattern pattern = PatternMaker.make(spec);
        BruteForceLikeness.Found found = BruteForceLikeness.of(pattern.inner(), pattern.outline(), 0.5, 0.55);
        assertThat(found.alike()).isZero();
        assertThat(pattern.verified().edgesTold()).isTrue();
        assertThat(PatternMaker.make(spec.withDesign(PatternSpec.FIRST_DESIGN))
                        .verified()
                        .edgesTold())
                .isFalse();
    }

    /** Where pieces are hardly larger than knobs need, some edges may come out alike: then that is told, not hidden. */
    @Test
    @Tag("far")
    void what_is_told_about_small_pieces_is_what_brute_force_finds() {
        CutPattern pattern = PatternMaker.make(PatternSpec.of(Size.mm(126, 105), new PieceGrid(12, 10), 4));
        double told = pattern.verified().unlikeMm();
        BruteForceLikeness.Found found = BruteForceLikeness.of(pattern.inner(), pattern.outline(), 0.2, 0.3);
        assertThat(found.closestMm()).isGreaterThan(told);
        assertThat(told).isGreaterThan(0.1);
    }

    @Test
    void the_first_design_did_have_edges_that_are_alike() {
        CutPattern pattern = PatternMaker.make(
                PatternSpec.of(Size.mm(240, 180), new PieceGrid(12, 9), 17).withDesign(PatternSpec.FIRST_DESIGN));
        assertThat(BruteForceLikeness.of(pattern.inner(), pattern.outline(), 0.2, 0.25)
                        .alike())
                .isPositive();
    }

    @Test
    void around_a_heart_no_two_edges_are_alike_either() {
        CutPattern pattern = PatternMaker.make(PatternSpec.of(Size.mm(240, 180), new PieceGrid(8, 6), 5)
                .withShapes(List.of(PersonalShapes.heart(Point.of(120, 85), Length.mm(50)))));
        assertThat(BruteForceLikeness.of(pattern.inner(), pattern.outline(), 0.2, 0.25)
                        .alike())
                .isZero();
    }

    @Test
    void the_same_number_draws_the_same_lines_twice() {
        PatternSpec spec = PatternSpec.of(Size.mm(300, 200), new PieceGrid(15, 10), 99);
        assertThat(PatternMaker.make(spec).svgPathData())
                .isEqualTo(PatternMaker.make(spec).svgPathData());
    }
}
