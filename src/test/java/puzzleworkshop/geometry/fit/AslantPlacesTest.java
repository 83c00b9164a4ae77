package puzzleworkshop.geometry.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Profile;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Size;

/**
 * Blanks that are longer than their board and fit aslant with a hair to spare, by Carver's condition (Problem E1225,
 * American Mathematical Monthly 64, 1957). Whatever is said to fit has a place, and JTS {@code covers} accepts it.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class AslantPlacesTest {

    private static final long SEED = 1225;

    /** The case of which the review found that it fits and has no place. */
    @Test
    void a_blank_with_a_tenth_of_a_millimetre_to_spare_has_a_place() {
        hasPlace(Outline.rectangle(Size.mm(254.2889, 116.4476)), Size.mm(264.0647, 22.3260), "review");
    }

    @Test
    void what_fits_aslant_with_0_to_a_tenth_of_a_millimetre_to_spare_has_a_place_in_20_000_cases() {
        Random random = new Random(SEED);
        int cases = 0;
        int fitting = 0;
        long slowest = 0;
        String slowestCase = "";
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
            long begin = System.nanoTime();
            boolean fits = hasPlace(board, blank, which);
            long took = System.nanoTime() - begin;
            if (took > slowest) {
                slowest = took;
                slowestCase = which;
            }
            fitting += fits ? 1 : 0;
            if (slack > 0.01) {
                assertThat(fits).as(which).isTrue();
            }
        }
        System.out.printf("%d of %d fit; slowest %.1f ms: %s%n", fitting, cases, slowest / 1e6, slowestCase);
        assertThat(fitting).isGreaterThan(17_000);
    }

    private static boolean hasPlace(Outline board, Size blank, String which) {
        UsefulSizes sizes = UsefulSizes.common();
        Profile profile = Profile.of(board, sizes);
        boolean fits = new BestPlace(profile, blank, null, sizes).fits();
        if (fits) {
            BestPlace.Found finest = new BestPlace(profile, blank, null, sizes).best().orElse(null);
            assertThat(finest).as(which).isNotNull();
            assertThat(board.free().covers(finest.placement().polygon(blank, 2 * Outline.TOLERANCE)))
                    .as(which + " lies at " + finest.placement())
                    .isTrue();
        }
        return fits;
    }
}
