package puzzleworkshop.pattern.mesh;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.BruteForceLikeness;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.edges.PieceLikeness;

/** How many edges can differ, and how alike the most alike edges and pieces are. */
@Tag("slow")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class KnobRoomTest {

    /** What was drawn bounds from below what can be had: 1,000 pieces of 20 mm without two edges alike. */
    @Test
    void the_bounds_hold_what_was_really_drawn() {
        for (CutStyle style : CutStyle.values()) {
            PatternSpec spec =
                    PatternSpec.of(Size.mm(800, 500), new PieceGrid(40, 25), 3).withStyle(style);
            KnobRoom room = KnobRoom.of(spec);
            assertThat(room.needed()).as(style.name()).isEqualTo(40 * 24 + 39 * 25);
            assertThat(room.atMost())
                    .as(style.name())
                    .isGreaterThan(room.needed())
                    .isGreaterThanOrEqualTo(room.atLeast());
        }
    }

    @Test
    void larger_pieces_leave_room_for_more() {
        double small = KnobRoom.of(PatternSpec.of(Size.mm(120, 120), new PieceGrid(10, 10), 3))
                .atLeast();
        double usual = KnobRoom.of(PatternSpec.of(Size.mm(200, 200), new PieceGrid(10, 10), 3))
                .atLeast();
        assertThat(usual).isGreaterThan(5 * small);
    }

    /** The distance by brute force, which shares no code with the pattern's own. */
    @Test
    void the_two_edges_most_alike_are_as_far_apart_as_brute_force_finds() {
        CutPattern pattern = PatternMaker.make(PatternSpec.of(Size.mm(160, 120), new PieceGrid(8, 6), 9));
        PieceLikeness likeness = PieceLikeness.of(pattern);
        BruteForceLikeness.Found found = BruteForceLikeness.of(
                pattern.inner(), pattern.outline(), 0.2, 1.2 * likeness.edges().mm());
        assertThat(likeness.edges().mm()).isCloseTo(found.closestMm(), within(0.12 * found.closestMm()));
        assertThat(likeness.edges().areaMm2()).isPositive();
    }

    /** A piece fits no better than its worst edge, and that is no nearer than the two edges most alike. */
    @Test
    void whole_pieces_are_farther_apart_than_single_edges() {
        CutPattern pattern = PatternMaker.make(PatternSpec.of(Size.mm(240, 180), new PieceGrid(12, 9), 9));
        PieceLikeness likeness = PieceLikeness.of(pattern);
        assertThat(likeness.pieces().mm()).isGreaterThan(likeness.edges().mm());
        assertThat(likeness.pieces().mm()).isGreaterThan(pattern.verified().unlikeMm());
    }

    /** Pieces that are the same four times over are found out: straight squares of the first design. */
    @Test
    void the_same_piece_twice_differs_by_nothing() {
        PatternSpec squares = PatternSpec.of(Size.mm(100, 100), new PieceGrid(5, 5), 1)
                .withStyle(CutStyle.STRAIGHT)
                .withDesign(PatternSpec.FIRST_DESIGN);
        PieceLikeness likeness = PieceLikeness.of(PatternMaker.make(squares));
        assertThat(likeness.pieces().mm()).isLessThan(1e-6);
        assertThat(likeness.pieces().areaMm2()).isLessThan(1e-6);
        assertThat(likeness.edges().mm()).isLessThan(1e-6);
    }

    /** A wider kerf leaves the lines as far apart as they are, and less of that to be felt; where all is play, nothing. */
    @Test
    void what_is_felt_is_what_lies_beyond_the_play_of_the_cut() {
        PatternSpec spec = PatternSpec.of(Size.mm(160, 120), new PieceGrid(8, 6), 9);
        PieceLikeness likeness = PieceLikeness.of(PatternMaker.make(spec));
        double play = spec.kerf().mm();
        assertThat(likeness.playMm()).isEqualTo(play);
        assertThat(likeness.edges().beyondMm(play)).isEqualTo(likeness.edges().mm() - play);
        assertThat(likeness.edges().beyondMm(5)).isZero();
        for (PieceLikeness.Felt felt : List.of(likeness.edges(), likeness.pieces())) {
            assertThat(felt.beyondMm2()).isPositive().isLessThan(felt.areaMm2());
        }
        PatternSpec alike = PatternSpec.of(Size.mm(100, 100), new PieceGrid(5, 5), 1)
                .withStyle(CutStyle.STRAIGHT)
                .withDesign(PatternSpec.FIRST_DESIGN);
        assertThat(PieceLikeness.of(PatternMaker.make(alike)).pieces().beyondMm2())
                .isZero();
    }
}
