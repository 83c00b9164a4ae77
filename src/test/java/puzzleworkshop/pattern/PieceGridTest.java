package puzzleworkshop.pattern;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PieceGridTest {

    private static final Size PICTURE = Size.mm(200, 300);

    @Test
    void forty_eight_pieces_of_200_by_300_are_six_by_eight() {
        assertThat(PieceGrid.nearest(PICTURE, 48)).isEqualTo(new PieceGrid(6, 8));
        assertThat(PieceGrid.nearest(PICTURE, 50)).isEqualTo(new PieceGrid(6, 8));
        assertThat(PieceGrid.nearest(PICTURE.turned(), 48)).isEqualTo(new PieceGrid(8, 6));
    }

    @Test
    void a_square_hundred_is_ten_by_ten() {
        assertThat(PieceGrid.nearest(Size.mm(300, 300), 100)).isEqualTo(new PieceGrid(10, 10));
    }

    @Test
    void offered_counts_rise_and_every_piece_is_nearly_square_and_large_enough() {
        for (Size size : List.of(PICTURE, Size.mm(148, 105), Size.mm(1000, 707), Size.mm(400, 100), Size.mm(55, 60))) {
            List<PieceGrid> offered = PieceGrid.offered(size);
            assertThat(offered).isNotEmpty();
            for (int i = 0; i < offered.size(); i++) {
                PieceGrid grid = offered.get(i);
                grid.requireFits(size);
                assertThat(grid.squareness(size)).isLessThanOrEqualTo(1.5);
                if (i > 0) {
                    assertThat(grid.pieces()).isGreaterThan(offered.get(i - 1).pieces());
                }
            }
        }
    }

    @Test
    void nothing_is_offered_that_cannot_be_held() {
        assertThatThrownBy(() -> PieceGrid.offered(Size.mm(15, 15))).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> PieceGrid.nearest(PICTURE, 1)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> PieceGrid.nearest(PICTURE, 2001)).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new PieceGrid(1, 1).requireSeveral()).isInstanceOf(Refused.class);
        assertThatThrownBy(() -> new PieceGrid(25, 25).requireFits(PICTURE))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("600");
    }

    @Test
    void two_thousand_pieces_can_be_had_when_the_size_allows() {
        assertThat(PieceGrid.nearest(Size.mm(1000, 800), 2000)).isEqualTo(new PieceGrid(50, 40));
    }

    @Test
    void a_wanted_piece_of_25_mm_gives_eight_by_twelve() {
        assertThat(PieceGrid.byPieceSide(PICTURE, Length.mm(25))).isEqualTo(new PieceGrid(8, 12));
    }
}
