package puzzleworkshop.pattern.edges;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.support.Seeds;

class KnobTest {

    @Test
    void every_head_is_wider_than_its_neck_by_more_than_the_beam_takes() {
        Random random = new Random(Seeds.from(5));
        for (int i = 0; i < 2000; i++) {
            double neck = 1.65 + random.nextDouble() * 5;
            Knob knob = new Knob(
                    random.nextBoolean() ? 1 : -1,
                    0.5,
                    random.nextDouble() * 0.3 - 0.15,
                    neck,
                    neck * 1.3 + 0.55,
                    neck * 1.6);
            var path = knob.draw(Point.of(0, 0), Point.of(neck * 6, 0), new double[] {1, 0}, new double[] {1, 0});
            // the narrowest stretch across the waist and the widest across the head, measured on the drawn curve
            double narrowest = Double.MAX_VALUE;
            for (int a = 0; a <= 60; a++) {
                for (int b = 0; b <= 60; b++) {
                    narrowest = Math.min(narrowest, path.at(1, a / 60.0).distanceTo(path.at(4, b / 60.0)));
                }
            }
            assertThat(narrowest).as("knob %d of seed 5", i).isCloseTo(neck, within(1e-9));
            assertThat(path.at(1, 1).distanceTo(path.at(4, 0)) - narrowest).isGreaterThanOrEqualTo(0.55);
        }
    }
}
