package puzzleworkshop.cutfiles;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.cutfiles.Inspection.Trouble;
import puzzleworkshop.cutfiles.reading.DrawnFile;
import puzzleworkshop.cutfiles.writing.CutFile;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.Piece;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternMaker;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class CutInspectorTest {

    private static CurvePath line(double... xy) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            points.add(Point.of(xy[i], xy[i + 1]));
        }
        return CurvePath.through(points, false);
    }

    private static DrawnFile file(List<CurvePath> lines) {
        return new DrawnFile("test", DrawnFile.Kind.SVG, lines, List.of(), Optional.empty(), List.of());
    }

    private static Inspection inspect(CurvePath... lines) {
        return CutInspector.inspect(file(List.of(lines)));
    }

    private static double doubled(Inspection inspection) {
        return inspection.of(Trouble.DOUBLED).map(Inspection.Finding::lengthMm).orElse(0.0);
    }

    @Test
    void a_line_drawn_twice_either_way_is_found_and_one_is_kept() {
        assertThat(doubled(inspect(line(0, 0, 100, 0), line(0, 0, 100, 0)))).isCloseTo(100, within(1e-6));
        Inspection back = inspect(line(0, 0, 100, 30), line(100, 30, 0, 0), line(0, 0, 100, 30));
        assertThat(back.cleaned()).hasSize(1);
        assertThat(back.savedMm()).isCloseTo(2 * Math.hypot(100, 30), within(1e-6));
    }

    @Test
    void a_partial_overlap_is_cut_to_what_is_new() {
        Inspection inspection = inspect(line(0, 0, 100, 0), line(60, 0, 160, 0));
        assertThat(doubled(inspection)).isCloseTo(40, within(0.05));
        assertThat(inspection.cleanedLengthMm()).isCloseTo(160, within(0.05));
    }

    @Test
    void lines_within_five_hundredths_count_as_one_and_beyond_they_do_not() {
        assertThat(doubled(inspect(line(0, 0, 100, 0), line(0, 0.045, 100, 0.045))))
                .isCloseTo(100, within(0.1));
        assertThat(inspect(line(0, 0, 100, 0), line(0, 0.06, 100, 0.06)).hasDoubles())
                .isFalse();
    }

    @Test
    void a_line_that_runs_back_along_itself_is_doubled() {
        assertThat(doubled(inspect(line(0, 0, 50, 0, 10, 0)))).isCloseTo(40, within(0.05));
    }

    @Test
    void lines_that_only_touch_or_cross_are_not_doubled() {
        assertThat(inspect(line(0, 0, 50, 0), line(50, 0, 100, 0), line(50, -20, 50, 20))
                        .hasDoubles())
                .isFalse();
        assertThat(inspect(line(0, 0, 50, 0, 50, 50), line(50, 50, 0, 50, 0, 0)).hasDoubles())
                .isFalse();
    }

    /** The classic: every piece drawn as a closed outline of its own, so that every inner line is there twice. */
    @Test
    void a_puzzle_drawn_piece_by_piece_is_cleaned_to_its_true_length() {
        Random random = new Random(Seeds.from(17));
        for (int i = 0; i < 6; i++) {
            PatternSpec spec = PatternSpec.of(
                            Size.mm(210, 160), new PieceGrid(3 + random.nextInt(6), 2 + random.nextInt(5)), i)
                    .withStyle(CutStyle.values()[i % 3]);
            CutPattern pattern = PatternMaker.make(spec);
            Inspection inspection = CutInspector.inspect(
                    file(pattern.pieces().stream().map(Piece::outline).toList()));
            assertThat(inspection.totalLengthMm())
                    .as("%s", spec)
                    .isCloseTo(2 * pattern.innerLengthMm() + pattern.outlineLengthMm(), within(1e-6));
            assertThat(doubled(inspection))
                    .as("%s", spec)
                    .isCloseTo(pattern.innerLengthMm(), within(pattern.innerLengthMm() * 0.003));
            assertThat(inspection.cleanedLengthMm())
                    .as("%s", spec)
                    .isCloseTo(pattern.totalLengthMm(), within(pattern.totalLengthMm() * 0.003));
            Inspection again = CutInspector.inspect(file(inspection.cleaned()));
            assertThat(again.hasDoubles()).as("%s", spec).isFalse();
            assertThat(again.of(Trouble.LOOSE_END)).as("%s", spec).isEmpty();
        }
    }

    @Test
    void a_clean_pattern_has_no_findings() {
        for (CutStyle style : CutStyle.values()) {
            CutPattern pattern = PatternMaker.make(
                    PatternSpec.of(Size.mm(200, 300), new PieceGrid(6, 8), 4).withStyle(style));
            CutPlan plan = pattern.plan(CutPlan.Sequence.INNER_FIRST);
            for (CutFile.Format format : new CutFile.Format[] {CutFile.Format.SVG, CutFile.Format.DXF}) {
                Inspection inspection = CutInspector.inspect(
                        DrawnFile.read("ours", CutFile.write(plan, format).bytes()),
                        Optional.of(Size.mm(400, 400)),
                        Optional.of(Size.mm(206, 306)));
                assertThat(inspection.findings()).as("%s %s", style, format).isEmpty();
                assertThat(inspection.frame().width()).isCloseTo(200, within(0.01));
            }
        }
    }

    @Test
    void a_gap_in_the_outline_and_a_loose_end_are_told_apart() {
        Inspection inspection = inspect(line(50, 0, 100, 0, 100, 80, 0, 80, 0, 0, 48, 0), line(40, 0, 40, 60));
        assertThat(inspection.of(Trouble.OPEN_OUTLINE))
                .hasValueSatisfying(found -> assertThat(found.count()).isEqualTo(2));
        assertThat(inspection.of(Trouble.LOOSE_END)).hasValueSatisfying(found -> {
            assertThat(found.count()).isEqualTo(1);
            assertThat(found.places().getFirst()).isEqualTo(Point.of(40, 60));
        });
    }

    @Test
    void rows_and_columns_may_cross_once_but_knobs_that_cut_into_each_other_are_trouble() {
        assertThat(inspect(line(0, 10, 100, 10), line(50, 0, 50, 100)).of(Trouble.CROSSING))
                .isEmpty();
        Inspection twice = inspect(line(0, 10, 100, 10), line(30, 0, 40, 30, 50, 0));
        assertThat(twice.of(Trouble.CROSSING))
                .hasValueSatisfying(found -> assertThat(found.count()).isEqualTo(2));
        assertThat(inspect(line(0, 0, 50, 50, 50, 0, 0, 50)).of(Trouble.CROSSING))
                .isPresent();
    }

    @Test
    void a_line_through_the_outline_or_from_nowhere_to_nowhere_is_no_row() {
        CurvePath outline =
                CurvePath.through(List.of(Point.of(0, 0), Point.of(100, 0), Point.of(100, 80), Point.of(0, 80)), true);
        assertThat(inspect(outline, line(0, 40, 100, 40), line(50, 0, 50, 80)).findings())
                .isEmpty();
        // a hair over the outline is how rows are drawn by hand
        assertThat(inspect(outline, line(-0.05, 40, 100.05, 40)).of(Trouble.CROSSING))
                .isEmpty();
        assertThat(inspect(outline, line(0, 40, 140, 40)).of(Trouble.CROSSING))
                .hasValueSatisfying(found -> assertThat(found.places()).containsExactly(Point.of(100, 40)));
        assertThat(inspect(outline, line(50, 0, 50, 80), line(40, 20, 60, 60)).of(Trouble.CROSSING))
                .hasValueSatisfying(found -> assertThat(found.count()).isEqualTo(1));
    }

    @Test
    void specks_and_lines_outside_bed_and_print_are_found() {
        Inspection inspection = CutInspector.inspect(
                file(List.of(
                        line(10, 10, 90, 10),
                        line(95, 10, 130, 10),
                        line(20, 20, 20.1, 20),
                        line(30, 30, 30.02, 30, 60, 30))),
                Optional.of(Size.mm(100, 100)),
                Optional.of(Size.mm(80, 80)));
        assertThat(inspection.of(Trouble.OUTSIDE_BED))
                .hasValueSatisfying(found -> assertThat(found.count()).isEqualTo(1));
        assertThat(inspection.of(Trouble.OUTSIDE_PRINT)).isPresent();
        assertThat(inspection.of(Trouble.TINY))
                .hasValueSatisfying(found -> assertThat(found.count()).isEqualTo(2));
    }
}
