package puzzleworkshop.pattern.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.JtsLines;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.Piece;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pattern.RandomSpecs;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PatternMakerTest {

    private static final PatternSpec A_SIZE = PatternSpec.of(Size.mm(200, 300), new PieceGrid(6, 8), 42);

    @Test
    void a_6_by_8_puzzle_has_48_pieces_that_fill_it() {
        CutPattern pattern = PatternMaker.make(A_SIZE);
        assertThat(pattern.pieces()).hasSize(48);
        assertThat(pattern.pieces().stream().mapToDouble(Piece::areaMm2).sum()).isCloseTo(60_000, within(1e-6));
        assertThat(pattern.pieces().stream().filter(Piece::atEdge)).hasSize(2 * 6 + 2 * 8 - 4);
        assertThat(pattern.pieces().get(6).centre().yMm()).isBetween(40.0, 75.0);
    }

    @Test
    void every_inner_edge_belongs_to_exactly_two_pieces_and_every_outer_to_one() {
        CutPattern pattern = PatternMaker.make(A_SIZE.withOutline(PuzzleEdge.rounded(Length.mm(8))));
        double around = pattern.pieces().stream()
                .mapToDouble(piece -> piece.outline().lengthMm())
                .sum();
        assertThat(around).isCloseTo(2 * pattern.innerLengthMm() + pattern.outlineLengthMm(), within(1e-6));
    }

    /** Perimeter of a rounded rectangle, 2(w + h) − 8r + 2πr: closed form. */
    @Test
    void rounded_corners_shorten_the_outline_as_they_must() {
        CutPattern pattern = PatternMaker.make(A_SIZE.withOutline(PuzzleEdge.rounded(Length.mm(10))));
        assertThat(pattern.outlineLengthMm()).isCloseTo(1000 - 80 + 20 * Math.PI, within(1e-3));
        assertThat(pattern.pieces().stream().mapToDouble(Piece::areaMm2).sum())
                .isCloseTo(60_000 - (4 - Math.PI) * 100, within(0.01));
    }

    @Test
    void lines_run_from_edge_to_edge_without_a_stop() {
        CutPattern pattern = PatternMaker.make(A_SIZE);
        assertThat(pattern.inner()).hasSize(5 + 7);
    }

    @Test
    void the_outline_never_leaves_the_finished_size() {
        for (PuzzleEdge outline :
                new PuzzleEdge[] {PuzzleEdge.square(), PuzzleEdge.rounded(Length.mm(6)), PuzzleEdge.wavy(Length.mm(3))
                }) {
            var bounds =
                    PatternMaker.make(A_SIZE.withOutline(outline)).outline().bounds();
            assertThat(bounds.width()).isCloseTo(200, within(1e-9));
            assertThat(bounds.height()).isCloseTo(300, within(1e-9));
        }
    }

    @Test
    void random_patterns_have_no_crossing_and_no_double_line_in_the_eyes_of_jts() {
        Random random = new Random(Seeds.from(20261125));
        for (int i = 0; i < 100; i++) {
            PatternSpec spec = RandomSpecs.next(random);
            CutPattern pattern = PatternMaker.make(spec);
            assertThat(pattern.pieces())
                    .as("case %d of seed 20261125: %s", i, spec)
                    .hasSize(spec.grid().pieces());
            assertThat(JtsLines.crossings(pattern))
                    .as("case %d of seed 20261125: %s", i, spec)
                    .isZero();
            assertThat(JtsLines.doubled(pattern))
                    .as("case %d of seed 20261125: %s", i, spec)
                    .isZero();
            assertThat(pattern.verified().smallestGapMm())
                    .isGreaterThanOrEqualTo(pattern.verified().closestAllowedMm());
        }
    }

    /**
     * A reprint years later must match the pieces already cut. If this fails, the drawing has changed: raise
     * {@link PatternSpec#DESIGN} and keep the old design as well, or undo the change.
     */
    @Test
    void the_same_seed_gives_the_same_pattern_forever() throws Exception {
        PatternSpec first = A_SIZE.withDesign(PatternSpec.FIRST_DESIGN);
        CutPattern pattern = PatternMaker.make(first.withOutline(PuzzleEdge.rounded(Length.mm(8))));
        CutPattern waves = PatternMaker.make(first.withStyle(CutStyle.WAVY).withOutline(PuzzleEdge.wavy(Length.mm(3))));
        assertThat(fingerprint(pattern)).isEqualTo("7a854126acc6c090");
        assertThat(fingerprint(waves)).isEqualTo("12147617d4f87597");
        assertThat(fingerprint(PatternMaker.make(A_SIZE.withSeed(43))))
                .isNotEqualTo(fingerprint(PatternMaker.make(A_SIZE)));
    }

    private static String fingerprint(CutPattern pattern) throws Exception {
        byte[] hash = java.security.MessageDigest.getInstance("SHA-256")
                .digest(pattern.svgPathData().getBytes(java.nio.charset.StandardCharsets.US_ASCII));
        return java.util.HexFormat.of().formatHex(hash, 0, 8);
    }

    @Test
    void pieces_too_small_for_the_thickness_are_refused() {
        PatternSpec thick =
                PatternSpec.of(Size.mm(200, 200), new PieceGrid(18, 18), 1).withThickness(Length.mm(6));
        assertThatThrownBy(() -> PatternMaker.make(thick))
                .isInstanceOf(Refused.class)
                .hasMessageStartingWith("pattern.too_thick");
        assertThat(PatternMaker.make(thick.withStyle(CutStyle.STRAIGHT)).pieces())
                .hasSize(324);
    }
}
