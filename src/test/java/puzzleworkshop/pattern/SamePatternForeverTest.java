package puzzleworkshop.pattern;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.mesh.PatternMaker;

/**
 * The same number gives the same pattern in every later version. The fingerprints are of patterns made on 2026-11-27
 * under design 1 and, where it says so, later ones, at a millionth of a millimetre. Where one no longer matches, puzzles that customers hold could not be
 * cut again as they were: raise {@link PatternSpec#DESIGN} and keep the old way beside the new one, never these numbers.
 */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class SamePatternForeverTest {

    private static final PatternSpec PLAIN =
            PatternSpec.of(Size.mm(300, 200), new PieceGrid(8, 6), 4711).withDesign(PatternSpec.FIRST_DESIGN);

    @Test
    void knobs_with_square_corners() {
        assertThat(fingerprint(PLAIN)).isEqualTo("b867e47cf09d5ea6");
    }

    @Test
    void another_number_gives_another_pattern_and_that_one_stays_too() {
        assertThat(fingerprint(PLAIN.withSeed(999_999))).isEqualTo("0f61768127d56571");
    }

    @Test
    void waves_with_rounded_corners() {
        assertThat(fingerprint(PLAIN.withStyle(CutStyle.WAVY).withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.ROUNDED))))
                .isEqualTo("929fef3f649a45a4");
    }

    @Test
    void straight_lines_with_a_wavy_edge() {
        assertThat(fingerprint(PLAIN.withStyle(CutStyle.STRAIGHT).withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.WAVY))))
                .isEqualTo("bab4b866a244ac15");
    }

    @Test
    void small_pieces_that_had_to_be_drawn_more_calmly() {
        PatternSpec small =
                PatternSpec.of(Size.mm(400, 300), new PieceGrid(30, 22), 12).withDesign(PatternSpec.FIRST_DESIGN);
        assertThat(fingerprint(small)).isEqualTo("f194048a30ffbffb");
    }

    @Test
    void a_heart_among_the_pieces() {
        PersonalShape heart = PersonalShapes.heart(Point.of(140, 90), Length.mm(60));
        assertThat(fingerprint(PLAIN.withShapes(List.of(heart)))).isEqualTo("59869e4bda45b792");
    }

    /** Design 2, in use since 2026-11-29: no two edges alike. */
    @Test
    void the_second_design_stays_as_well() {
        PatternSpec second = PLAIN.withDesign(2);
        assertThat(fingerprint(second)).isEqualTo("10760bb1eb25268b");
        assertThat(fingerprint(second.withStyle(CutStyle.WAVY).withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.ROUNDED))))
                .isEqualTo("2dff2b43934a16ff");
        assertThat(fingerprint(second.withStyle(CutStyle.STRAIGHT).withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.WAVY))))
                .isEqualTo("866c7b1741d369af");
        assertThat(fingerprint(PatternSpec.of(Size.mm(180, 144), new PieceGrid(15, 12), 12)
                        .withDesign(2)))
                .isEqualTo("8d7f1a341dcedb45");
        PersonalShape heart = PersonalShapes.heart(Point.of(140, 90), Length.mm(60));
        assertThat(fingerprint(second.withShapes(List.of(heart)))).isEqualTo("bcd4e8919d9d8215");
    }

    /** Made on 2026-11-29. */
    @Test
    void layouts_and_curved_outer_edges_stay_too() {
        PatternSpec second = PatternSpec.of(Size.mm(240, 180), new PieceGrid(12, 9), 31);
        assertThat(fingerprint(second.withLayout(PieceLayout.UNEVEN))).isEqualTo("5089b52d0863522b");
        assertThat(fingerprint(second.withLayout(
                        new PieceLayout(false, List.of(new KeptWhole(Point.of(90, 70), 16, 22))))))
                .isEqualTo("8db4191b4b37dab3");
        assertThat(fingerprint(second.withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.ROUND))))
                .isEqualTo("6f384395edfbbf70");
        assertThat(fingerprint(second.withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.HEART))
                        .withStyle(CutStyle.WAVY)))
                .isEqualTo("83764f78f27d582a");
    }

    /** Every coordinate at a millionth of a millimetre, so that the last bit of another processor does not matter. */
    private static String fingerprint(PatternSpec spec) {
        CutPattern pattern = PatternMaker.make(spec);
        StringBuilder text = new StringBuilder();
        for (CurvePath line : pattern.inner()) {
            text.append(rounded(line)).append('\n');
        }
        text.append(rounded(pattern.outline()));
        try {
            byte[] digest =
                    MessageDigest.getInstance("SHA-256").digest(text.toString().getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest).substring(0, 16);
        } catch (NoSuchAlgorithmException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private static String rounded(CurvePath line) {
        StringBuilder text = new StringBuilder();
        for (String word : ShapeText.of(line).split(" ")) {
            text.append(
                            word.length() == 1 && Character.isLetter(word.charAt(0))
                                    ? word
                                    : Long.toString(Math.round(Double.parseDouble(word) * 1e6)))
                    .append(' ');
        }
        return text.toString();
    }
}
