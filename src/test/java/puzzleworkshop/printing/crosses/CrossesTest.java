package puzzleworkshop.printing.crosses;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CrossesTest {

    @Test
    void the_usual_ones_fit_the_usual_overhang_of_three_millimetres_and_no_smaller_one_than_they_say() {
        assertThat(Crosses.USUAL.fit(Length.mm(3))).isTrue();
        assertThat(Crosses.USUAL.fit(Crosses.USUAL.leastOverhang())).isTrue();
        assertThat(Crosses.USUAL.fit(Length.mm(2.7))).isFalse();
    }

    @Test
    void a_print_whose_overhang_is_too_small_carries_none() {
        assertThat(new PrintedSticker(Size.mm(200, 150), Length.mm(2), Optional.of(Crosses.USUAL)).crosses())
                .isEmpty();
    }

    /** Whatever is set: crosses that are said to fit touch neither the finished picture nor the edge of the print. */
    @Test
    void crosses_that_fit_lie_outside_the_cut_and_inside_the_print() {
        Random random = new Random(Seeds.from(14));
        for (int i = 0; i < 2_000; i++) {
            Crosses crosses =
                    new Crosses(Length.mm(1 + random.nextDouble() * 5), Length.mm(0.5 + random.nextDouble() * 6));
            Length overhang = Length.mm(random.nextDouble() * 12);
            if (!crosses.fit(overhang)) {
                continue;
            }
            Size finished = Size.mm(60 + random.nextInt(400), 60 + random.nextInt(300));
            double half = crosses.span().mm() / 2;
            for (Point middle : crosses.on(finished)) {
                double beyondX =
                        Math.max(-middle.xMm(), middle.xMm() - finished.width().mm());
                double beyondY =
                        Math.max(-middle.yMm(), middle.yMm() - finished.height().mm());
                assertThat(Math.min(beyondX, beyondY) - half).isPositive();
                assertThat(Math.max(beyondX, beyondY) + half).isLessThan(overhang.mm());
            }
        }
    }
}
