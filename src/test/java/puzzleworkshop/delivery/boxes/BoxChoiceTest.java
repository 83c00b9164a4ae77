package puzzleworkshop.delivery.boxes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Puzzle;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.PieceSizes;
import puzzleworkshop.pattern.mesh.PatternMaker;
import puzzleworkshop.supplies.LaserFacts;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;

@DisplayNameGeneration(ReplaceUnderscores.class)
class BoxChoiceTest {

    private static final Length THREE = Length.mm(3);

    /** 300 × 200 × 3.2 mm of pieces is 192 cm³, less what the beam took. */
    private final PatternSpec spec = PatternSpec.of(Size.mm(300, 200), new PieceGrid(8, 6), 5);

    private final CutPattern pattern = PatternMaker.make(spec);
    private final Contents loose =
            Contents.of(new Puzzle(spec, IntendedAge.GROWN_UPS, false), PieceSizes.of(pattern), THREE);

    @Test
    void the_volume_of_the_pieces_is_that_of_the_puzzle_less_the_kerf() {
        assertThat(loose.solidMm3()).isBetween(300 * 200 * 3.2 * 0.97, 300 * 200 * 3.2);
    }

    @Test
    void the_smallest_that_takes_the_loose_pieces_is_chosen() {
        // 2.5 × 192 cm³ = 480 cm³: 470 is too small, 500 does.
        BoxChoice choice = BoxChoice.smallest(
                List.of(box(1, 100, 100, 60, 9), box(2, 100, 100, 50, 9), box(3, 100, 100, 46, 9)), loose, 1);
        assertThat(choice.box().orElseThrow().item().id()).contains(new SupplyId(2));
        assertThat(choice.reason().key()).isEqualTo("delivery.box.estimated");
    }

    @Test
    void one_that_is_not_in_stock_for_all_puzzles_is_passed_over() {
        BoxChoice choice = BoxChoice.smallest(List.of(box(1, 100, 100, 60, 3), box(2, 100, 100, 50, 2)), loose, 3);
        assertThat(choice.box().orElseThrow().item().id()).contains(new SupplyId(1));
        assertThat(BoxChoice.smallest(List.of(box(2, 100, 100, 50, 2)), loose, 3)
                        .reason()
                        .key())
                .isEqualTo("delivery.box.short");
    }

    @Test
    void a_measured_factor_counts_instead_of_the_usual_one() {
        Box tight = new Box(
                box(1, 100, 100, 46, 9).item(),
                Length.mm(100),
                Length.mm(100),
                Length.mm(46),
                Length.mm(1),
                40,
                Optional.of(2.0));
        assertThat(tight.takes(loose)).isTrue();
        // Pieces of 192 cm³ that stand 40 mm high on a base of 120 × 90 mm take 432 cm³, 2.25 times their own.
        assertThat(Box.measured(120 * 90, Length.mm(40), 192_000)).isCloseTo(2.25, within(1e-9));
    }

    @Test
    void a_box_with_room_enough_that_is_thinner_than_the_largest_piece_does_not_take_it() {
        assertThat(box(1, 1000, 500, 2, 9).takes(loose)).isFalse();
    }

    @Test
    void a_puzzle_in_its_tray_needs_a_box_as_long_and_wide_as_the_tray() {
        Contents tray = Contents.of(new Puzzle(spec, IntendedAge.GROWN_UPS, true), PieceSizes.of(pattern), THREE);
        // 300 + 2 · (15 + 0.5) = 331 mm, 231 mm, and two boards with the print: 6.2 mm
        assertThat(tray.stiffest()).containsExactly(331, 231, 6.2);
        assertThat(box(1, 331, 231, 7, 9).takes(tray)).isTrue();
        assertThat(box(1, 330, 231, 7, 9).takes(tray)).isFalse();
        assertThat(box(1, 331, 231, 6, 9).takes(tray)).isFalse();
    }

    @Test
    void a_trays_weight_is_frame_and_backing() {
        // (2 · 331 · 231 − 301 · 201) mm² · 3 mm · 660 kg/m³ = 183.0 g
        double expected = (2 * 331 * 231 - 301 * 201) * 3 * 660e-6;
        assertThat(PackedWeight.tray(new Puzzle(spec, IntendedAge.GROWN_UPS, true), THREE, 660))
                .isCloseTo(expected, within(1e-9))
                .isCloseTo(183.0, within(0.1));
        assertThat(PackedWeight.tray(new Puzzle(spec, IntendedAge.GROWN_UPS, false), THREE, 660))
                .isZero();
    }

    private static Box box(long id, double a, double b, double c, int stock) {
        SupplyItem item = new SupplyItem(
                Optional.of(new SupplyId(id)),
                "box " + id,
                SupplyKind.BOX,
                UseUnit.PIECE,
                Optional.empty(),
                Optional.empty(),
                "pack",
                BigDecimal.TEN,
                new LaserFacts(LaserFacts.Pvc.FREE, LaserFacts.Adhesive.NONE),
                5,
                5,
                false,
                false,
                BigDecimal.valueOf(stock),
                Money.of("0.50", "EUR"));
        return Box.of(item, Length.mm(c), Length.mm(a), Length.mm(b), Length.mm(1.5), 40, Optional.empty());
    }
}
