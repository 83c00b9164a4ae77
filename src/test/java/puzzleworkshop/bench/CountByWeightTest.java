package puzzleworkshop.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CountByWeightTest {

    /** Yellow birch: specific gravity 0.62 on oven-dry mass, × 1.12 at 12 % moisture (Wood Handbook, table 5-3; from memory). */
    private static final double BIRCH = 0.62 * 1.12 * 1000;

    private static CountByWeight of(double lines, int pieces) {
        return CountByWeight.of(
                Size.mm(300, 200).area(), Length.mm(lines), Length.mm(0.15), Length.mm(3), BIRCH, pieces);
    }

    /** 300 × 200 × 3 mm of it weigh 124.99 g (Wood Handbook, ch. 4); the facing adds 0.06 m² × 200 g/m² = 12 g. */
    @Test
    void an_uncut_board_weighs_what_the_handbook_says_and_its_facing() {
        assertThat(of(0, 1).grams()).isCloseTo(124.99 + 12, within(0.01));
    }

    /** A piece of 2 cm × 2 cm weighs 0.833 g of wood (same source). */
    @Test
    void a_piece_of_two_centimetres_weighs_under_a_gram() {
        CountByWeight piece = CountByWeight.of(Area.mm2(400), Length.ZERO, Length.mm(0.15), Length.mm(3), BIRCH, 1);
        assertThat(piece.grams() - 0.08).isCloseTo(0.833, within(0.001));
    }

    @Test
    void the_beam_takes_its_kerf_along_every_inner_line() {
        double lost = of(0, 48).grams() - of(4000, 48).grams();
        assertThat(lost).isCloseTo(4000 * 0.15 * (3 * BIRCH * 1e-6 + 200e-6), within(1e-3));
    }

    /** Boards differ more than one piece weighs: said, not hidden. */
    @Test
    void one_missing_of_48_does_not_show_but_one_of_two_does() {
        assertThat(of(4000, 48).showsOneMissing()).isFalse();
        assertThat(of(4000, 48).fewestThatShow()).isBetween(8, 12);
        assertThat(of(200, 2).showsOneMissing()).isTrue();
    }
}
