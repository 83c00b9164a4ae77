package puzzleworkshop.artwork.pixels;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.artwork.Picture;
import puzzleworkshop.artwork.ResolutionTest;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CropTest {

    @Test
    void filling_takes_the_whole_shorter_side_and_the_middle() {
        Crop crop = Crop.filling(ResolutionTest.picture(6000, 4000), 1);
        assertThat(crop.height()).isEqualTo(1);
        assertThat(crop.width()).isEqualTo(4000 / 6000.0, within(1e-12));
        assertThat(crop.left()).isEqualTo(1 / 6.0, within(1e-12));
    }

    @Test
    void fitting_leaves_a_border_on_both_sides() {
        Crop crop = Crop.fitting(ResolutionTest.picture(6000, 4000), 1, 0, "#102030");
        assertThat(crop.width()).isEqualTo(1);
        assertThat(crop.height()).isEqualTo(1.5, within(1e-12));
        assertThat(crop.top()).isEqualTo(-0.25, within(1e-12));
        assertThat(crop.borderRgb()).isEqualTo(0x102030);
    }

    @Test
    void a_filled_frame_never_leaves_the_picture() {
        assertThatThrownBy(() -> new Crop(0.6, 0, 0.5, 0.5, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Crop(Double.NaN, 0, 0.5, 0.5, 0, Crop.Fit.FIT, Crop.WHITE, Crop.Edge.MIRRORED))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Crop(0, 0, 1, 1, 4, Crop.Fit.FIT, Crop.WHITE, Crop.Edge.MIRRORED))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Crop(0, 0, 1, 1, 0, Crop.Fit.FIT, "url(x)", Crop.Edge.MIRRORED))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void whatever_the_picture_and_the_size_a_crop_has_the_aspect_it_was_made_for() {
        long seed = Seeds.from(20261125);
        Random random = new Random(seed);
        for (int i = 0; i < 2000; i++) {
            Picture picture = ResolutionTest.picture(1 + random.nextInt(9000), 1 + random.nextInt(9000));
            double aspect = Math.exp(random.nextDouble() * 3 - 1.5);
            if (picture.aspect() / aspect > 15
                    || aspect / picture.aspect() > 15
                    || picture.aspect() * aspect > 15
                    || 1 / (picture.aspect() * aspect) > 15) {
                continue;
            }
            int turns = random.nextInt(4);
            assertThat(Crop.filling(picture, aspect, turns).hasAspect(picture, aspect))
                    .as("seed %d case %d", seed, i)
                    .isTrue();
            assertThat(Crop.fitting(picture, aspect, turns, Crop.WHITE).hasAspect(picture, aspect))
                    .as("seed %d case %d", seed, i)
                    .isTrue();
            double other = aspect * (0.8 + 0.4 * random.nextDouble());
            Crop matched = Crop.filling(picture, aspect, turns).matched(picture, other);
            assertThat(matched.hasAspect(picture, other))
                    .as("seed %d case %d", seed, i)
                    .isTrue();
        }
    }
}
