package puzzleworkshop.geometry.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.Polygon;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(ReplaceUnderscores.class)
class PairFitTest {

    private static final long PLENTY = 20_000_000;

    private static boolean mayHold(Outline board, Size one, Size other) {
        return PairFit.ask(board.segments(), one, other, PLENTY).mayHold();
    }

    /** Friedman, Packing Unit Squares in Squares, Electronic Journal of Combinatorics DS7: two unit squares need a side of 2. */
    @Test
    void two_squares_lie_in_a_square_of_twice_their_side_and_in_none_clearly_smaller() {
        Size square = Size.mm(100, 100);
        assertThat(mayHold(Outline.rectangle(Size.mm(200, 200)), square, square))
                .isTrue();
        assertThat(mayHold(Outline.rectangle(Size.mm(185, 185)), square, square))
                .isFalse();
    }

    @Test
    void a_blank_that_does_not_fit_across_leaves_no_room_for_its_neighbour() {
        Outline board = Outline.rectangle(Size.mm(300, 180));
        assertThat(mayHold(board, Size.mm(200, 150), Size.mm(200, 120))).isFalse();
        assertThat(mayHold(board, Size.mm(200, 150), Size.mm(170, 90))).isTrue();
    }

    /** Two rectangles laid side by side at random angles; the board is the hull of both, so it holds them (JTS). */
    @Test
    void what_lies_side_by_side_is_never_refused() {
        Random random = new Random(Seeds.from(15));
        int seen = 0;
        while (seen < 12) {
            Size one = Size.mm(100 + random.nextInt(200), 80 + random.nextInt(120));
            Size other = Size.mm(100 + random.nextInt(200), 80 + random.nextInt(120));
            Geometry first = new Placement(0, 0, random.nextInt(180)).polygon(one, 0);
            Geometry second = new Placement(random.nextInt(500) - 250, random.nextInt(500) - 250, random.nextInt(180))
                    .polygon(other, 0);
            if (!first.intersects(second)) {
                seen++;
                Outline board = Outline.ofPart(
                        (Polygon) first.union(second).convexHull().buffer(0.01));
                assertThat(mayHold(board, one, other))
                        .as("%s %s on %s", one, other, board)
                        .isTrue();
            }
        }
    }

    @Test
    void without_work_nothing_is_refused() {
        Size square = Size.mm(100, 100);
        assertThat(PairFit.ask(Outline.rectangle(Size.mm(120, 120)).segments(), square, square, 0)
                        .mayHold())
                .isTrue();
    }
}
