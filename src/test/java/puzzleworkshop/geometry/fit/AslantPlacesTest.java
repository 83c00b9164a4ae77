package puzzleworkshop.geometry.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Size;

/**
 * Blanks that are longer than their board and fit aslant with a hair to spare, by Carver's condition (Problem E1225,
 * American Mathematical Monthly 64, 1957). Whatever is said to fit has a place, and JTS {@code covers} accepts it.
 */
@Tag("slow")
@DisplayNameGeneration(ReplaceUnderscores.class)
class AslantPlacesTest {

    private static final long SEED = 1225;

    /** The case of which the review found that it fits and has no place. */
    @Test
    void a_blank_with_a_tenth_of_a_millimetre_to_spare_has_a_place() {
        hasPlace(Outline.rectangle(Size.mm(254.2889, 116.4476)), Size.mm(264.0647, 22.3260), "review", true);
    }

    @Test
    void what_fits_aslant_with_0_to_a_tenth_of_a_millimetre_to_spare_has_a_place_in_20_000_cases() {
        Random random = new Random(SEED);
        int cases = 0;
        int fitting = 0;
        while (cases < 20_000) {
            double a = 100 + 500 * random.nextDouble();
            double p = a * (1.001 + 0.12 * random.nextDouble());
            double q = 5 + 0.5 * a * random.nextDouble();
            double slack = random.nextInt(10) == 0 ? 0 : 0.1 * random.nextDouble();
            double b = RectangleFitTest.carver(p, q, a) + slack;
            if (b > a || b < q) {
                continue;
            }
            cases++;
            double far = switch (random.nextInt(3)) {
                case 0 -> 0;
                case 1 -> 1000 * random.nextDouble();
                default -> 1e5 * (random.nextDouble() - 0.5) * 2;
            };
            double turn = random.nextInt(2) == 0 ? 0 : 180 * random.nextDouble();
            Outline board = Outline.of(new Placement(far, far / 3, turn).corners(a, b), List.of());
            Size blank = Size.mm(p, q);
            String which = "seed %d case %d: %s × %s with %s to spare in %s × %s at %s turned %s"
                    .formatted(SEED, cases, p, q, slack, a, b, far, turn);
            boolean fits = hasPlace(board, blank, which, cases % 40 == 0);
            fitting += fits ? 1 : 0;
            if (slack > 0.01) {
                assertThat(fits).as(which).isTrue();
            }
        }
        assertThat(fitting).isGreaterThan(17_000);
    }

    /** @param all whole degrees are looked at as well, as for a screen; else edges only, as when thousands are weighed up */
    private static boolean hasPlace(Outline board, Size blank, String which, boolean all) {
        UsefulSizes sizes = UsefulSizes.common();
        Profile profile = Profile.passing(board, sizes);
        boolean fits = new BestPlace(profile, blank, null, sizes).fits();
        if (fits) {
            BestPlace search = new BestPlace(profile, blank, null, sizes);
            BestPlace.Found found = (all ? search.best() : search.atEdges()).orElse(null);
            assertThat(found).as(which).isNotNull();
            assertThat(board.free().covers(found.placement().polygon(blank, 2 * Outline.TOLERANCE)))
                    .as(which + " lies at " + found.placement())
                    .isTrue();
        }
        return fits;
    }

    /** Work is counted, not time: eighty million border pieces take a quarter of a second on an ordinary machine. */
    @Test
    void a_round_board_with_a_thousand_corners_and_many_holes_is_answered_with_bounded_work() {
        Random random = new Random(SEED);
        List<Point> ring = new ArrayList<>();
        for (int k = 0; k < 700; k++) {
            double turn = 2 * Math.PI * k / 700;
            ring.add(new Point(300 + 280 * Math.cos(turn) + random.nextDouble() * 0.3, 300 + 260 * Math.sin(turn)));
        }
        List<List<Point>> holes = new ArrayList<>();
        for (int i = 0; i < 90; i++) {
            holes.add(new Placement(
                            80 + 440 * random.nextDouble(), 80 + 440 * random.nextDouble(), 90 * random.nextDouble())
                    .corners(2 + 6 * random.nextDouble(), 2 + 6 * random.nextDouble()));
        }
        Outline board = Outline.mended(ring, holes);
        Profile profile = Profile.of(board, UsefulSizes.common());
        for (int size = 30; size <= 150; size += 20) {
            BestPlace search = new BestPlace(profile, Size.mm(size, size * 0.8), null, UsefulSizes.common());
            search.best();
            assertThat(search.work()).as("blank of %d mm", size).isLessThan(2 * BestPlace.MOST_WORK);
        }
    }
}
