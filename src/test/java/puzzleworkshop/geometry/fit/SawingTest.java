package puzzleworkshop.geometry.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Size;

/**
 * By hand: an L of 400 × 300 mm without its corner of 200 × 150 is sawn along the long leg to 400 × 150 and 200 × 150, or along
 * the short leg to 200 × 300 and 200 × 150: the same areas, other pieces.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class SawingTest {

    private static final Outline L = Outline.of(List.of(
            new Point(0, 0),
            new Point(400, 0),
            new Point(400, 150),
            new Point(200, 150),
            new Point(200, 300),
            new Point(0, 300)));

    @Test
    void an_l_is_sawn_along_the_leg_whose_pieces_are_worth_more() {
        // 60,000 mm² at 1 and 30,000 at 0.2 are 66,000; 90,000 at 0.2 are 18,000
        for (Size wanted : List.of(Size.mm(390, 140), Size.mm(290, 190))) {
            List<Sawing> ways = Sawing.ways(L, new UsefulSizes(Size.mm(100, 80), List.of(wanted)).worth(0.2, 1));
            assertThat(ways).hasSize(2);
            Sawing best = ways.getFirst();
            assertThat(best.value().mm2()).isCloseTo(66_000, within(50.0));
            assertThat(ways.getLast().value().mm2()).isCloseTo(18_000, within(50.0));
            assertThat(wanted.fitsUpright(best.pieces().getFirst().size())).isTrue();
            assertThat(best.pieces().stream()
                            .mapToDouble(piece -> piece.size().area().mm2())
                            .sum())
                    .isCloseTo(90_000, within(50.0));
        }
    }

    @Test
    void a_rectangle_is_left_as_it_is() {
        List<Sawing> ways = Sawing.ways(Outline.rectangle(Size.mm(700, 340)), UsefulSizes.common());
        assertThat(ways).hasSize(1);
        assertThat(ways.getFirst().pieces()).hasSize(1);
    }

    @Test
    void pieces_lie_in_the_part_and_not_one_on_another() {
        for (Sawing way : Sawing.ways(L, UsefulSizes.common())) {
            List<Outline> pieces = way.pieces().stream()
                    .map(piece -> Outline.of(piece.placement().corners(piece.size())))
                    .toList();
            assertThat(Outline.union(pieces.stream().map(Outline::freeShape).toList())
                            .getArea())
                    .isCloseTo(pieces.stream().mapToDouble(p -> p.area().mm2()).sum(), within(1.0));
            pieces.forEach(piece -> assertThat(
                            Outline.difference(piece.freeShape(), L.freeShape()).getArea())
                    .isLessThan(1));
        }
    }
}
