package puzzleworkshop.pattern.smallparts;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternMaker;
import puzzleworkshop.pattern.smallparts.SmallPartsCylinder.Answer;

/** The cylinder: 16 CFR 1501.4, figure 1 (1.25 in across, 1 to 2.25 in deep, inch values). The solids: geometry. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SmallPartsTest {

    private static final int BUDGET = 400_000;

    private static Answer ball(double diameter) {
        return SmallPartsCylinder.test(TurnedSolid.of(new double[][] {{0, 0, 0}}), diameter / 2, 0, BUDGET);
    }

    /** A rod inscribed in the true one with 24 sides, on the safe side for 'does not fit'. */
    private static Answer rod(double diameter, double length) {
        double[][] corners = new double[48][];
        for (int i = 0; i < 24; i++) {
            double angle = 2 * Math.PI * i / 24;
            corners[2 * i] = new double[] {diameter / 2 * Math.cos(angle), diameter / 2 * Math.sin(angle), 0};
            corners[2 * i + 1] = new double[] {corners[2 * i][0], corners[2 * i][1], length};
        }
        return SmallPartsCylinder.test(TurnedSolid.of(corners), 0, 0, BUDGET);
    }

    private static Answer plate(double width, double height) {
        CurvePath outline = CurvePath.through(
                List.of(Point.of(0, 0), Point.of(width, 0), Point.of(width, height), Point.of(0, height)), true);
        return SmallParts.test(outline, 3, 0, BUDGET);
    }

    @Test
    void a_ball_of_31_mm_fits_and_one_of_32_mm_does_not() {
        assertThat(ball(31)).isEqualTo(Answer.FITS);
        assertThat(ball(31.7)).isEqualTo(Answer.FITS);
        assertThat(ball(31.8)).isEqualTo(Answer.DOES_NOT_FIT);
        assertThat(ball(32)).isEqualTo(Answer.DOES_NOT_FIT);
    }

    @Test
    void a_thin_rod_of_50_mm_fits_and_one_of_60_mm_does_not() {
        assertThat(rod(5, 50)).isEqualTo(Answer.FITS);
        assertThat(rod(5, 60)).isEqualTo(Answer.DOES_NOT_FIT);
    }

    @Test
    void flat_pieces_of_3_mm_with_known_answers() {
        assertThat(plate(20, 20)).isEqualTo(Answer.FITS);
        assertThat(plate(30, 40)).isEqualTo(Answer.FITS);
        assertThat(plate(45, 60)).isEqualTo(Answer.DOES_NOT_FIT);
    }

    /** A plate wider than the cylinder cannot enter; one longer than the longest way inside (65.4 mm) neither. */
    @Test
    void width_and_longest_way_are_bounds() {
        assertThat(plate(32, 32)).isEqualTo(Answer.DOES_NOT_FIT);
        assertThat(plate(10, 66)).isEqualTo(Answer.DOES_NOT_FIT);
        assertThat(plate(31, 45)).isEqualTo(Answer.DOES_NOT_FIT);
    }

    @Test
    void small_pieces_are_forbidden_under_3_and_need_a_warning_from_3() {
        CutPattern small = PatternMaker.make(PatternSpec.of(Size.mm(200, 300), new PieceGrid(8, 12), 1));
        SmallPartsVerdict baby = SmallParts.judge(small, IntendedAge.UNDER_3);
        assertThat(baby.hasSmallParts()).isTrue();
        assertThat(baby.saleable()).isFalse();
        assertThat(baby.boxText()).isEmpty();
        SmallPartsVerdict child = SmallParts.judge(small, IntendedAge.FROM_3);
        assertThat(child.saleable()).isTrue();
        assertThat(child.boxText())
                .hasValueSatisfying(text -> assertThat(text.key()).isEqualTo("pattern.small_parts.box"));
    }

    @Test
    void large_pieces_are_no_small_parts() {
        CutPattern large = PatternMaker.make(
                PatternSpec.of(Size.mm(200, 300), new PieceGrid(3, 4), 1).withThickness(Length.mm(4)));
        SmallPartsVerdict verdict = SmallParts.judge(large, IntendedAge.UNDER_3);
        assertThat(verdict.smallPieces()).isEmpty();
        assertThat(verdict.saleable()).isTrue();
        assertThat(verdict.notes())
                .extracting("key")
                .contains("pattern.small_parts.abuse", "pattern.small_parts.computed");
    }

    /** UK SI 2011/1881, Schedule 1: puzzles with more than 500 pieces are not toys. */
    @Test
    void over_500_pieces_the_verdict_says_it_is_no_toy() {
        CutPattern many = PatternMaker.make(PatternSpec.of(Size.mm(500, 400), new PieceGrid(26, 20), 1));
        assertThat(SmallParts.judge(many, IntendedAge.GROWN_UPS).notes())
                .extracting("key")
                .contains("pattern.small_parts.no_toy");
    }

    /** Pieces of 37 × 33 mm that miss the cylinder by a hair: 'could not be decided' stood on New order for them. */
    @ParameterizedTest
    @ValueSource(longs = {1148, 1666})
    void no_piece_of_an_ordinary_puzzle_stays_undecided(long seed) {
        CutPattern pattern = PatternMaker.make(PatternSpec.of(Size.mm(300, 200), new PieceGrid(8, 6), seed));
        assertThat(SmallParts.judge(pattern, IntendedAge.FROM_3).undecided()).isZero();
    }
}
