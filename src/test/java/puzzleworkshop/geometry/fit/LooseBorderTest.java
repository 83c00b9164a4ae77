package puzzleworkshop.geometry.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.Seeds;

/** The border that questions are asked of first may say 'fits' wrongly, but never 'does not fit'. JTS is the judge. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LooseBorderTest {

    private static final UsefulSizes SIZES = UsefulSizes.common();

    @Test
    void lies_around_the_whole_board_by_less_than_0_7_mm_and_has_half_of_its_corners_at_most() {
        Random random = new Random(Seeds.from(20261129));
        for (int i = 0; i < 200; i++) {
            Geometry free = curved(random).freeShape();
            Geometry loose = Profile.loosened(free);
            assertThat(loose.covers(free)).as("board %d inside", i).isTrue();
            assertThat(free.buffer(0.7).covers(loose)).as("board %d near", i).isTrue();
            assertThat(loose.getNumPoints()).as("corners of %d", i).isLessThan(free.getNumPoints() / 2);
        }
    }

    @Test
    void on_a_curved_board_the_rung_that_is_told_is_the_one_left_by_that_place() {
        Random random = new Random(Seeds.from(20261129));
        for (int i = 0; i < 12; i++) {
            Outline outline = curved(random);
            Profile board = Profile.of(outline, SIZES);
            double side = outline.bounds().longerSide().mm() * (0.15 + 0.3 * random.nextDouble());
            Size blank = Size.mm(side, side * (0.5 + 0.5 * random.nextDouble()));
            BestSheets.rank(List.of(board), blank, null, SIZES, 1).forEach(best -> {
                // Asked of the border itself, at the place that was chosen.
                assertThat(BestSheets.rungLeft(board, blank, best.place(), SIZES))
                        .isEqualTo(best.rung());
                assertThat(outline.freeShape().buffer(1e-3).covers(best.place().polygon(blank, 0)))
                        .isTrue();
            });
        }
    }

    /** A board sawn by hand along a curve, with one round hole. */
    private static Outline curved(Random random) {
        double reach = 150 + 250 * random.nextDouble();
        double one = 0.15 * random.nextDouble();
        double two = 0.1 * random.nextDouble();
        double shift = 6 * random.nextDouble();
        int corners = 300 + random.nextInt(500);
        List<Point> outer = new ArrayList<>();
        for (int k = 0; k < corners; k++) {
            double turn = 2 * Math.PI * k / corners;
            double r = reach * (1 + one * Math.sin(2 * turn + shift) + two * Math.sin(5 * turn));
            outer.add(new Point(r * Math.cos(turn), r * Math.sin(turn)));
        }
        List<Point> hole = new ArrayList<>();
        double radius = 8 + 30 * random.nextDouble();
        for (int k = 0; k < 120; k++) {
            double turn = 2 * Math.PI * k / 120;
            hole.add(new Point(reach * 0.3 + radius * Math.cos(turn), radius * Math.sin(turn)));
        }
        return Outline.of(outer, List.of(hole));
    }
}
