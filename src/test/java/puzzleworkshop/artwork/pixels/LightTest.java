package puzzleworkshop.artwork.pixels;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Lightness L* of sRGB colours under D65 (CIE 1976, IEC 61966-2-1; published tables, from memory). */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LightTest {

    @Test
    void known_colours_have_their_known_lightness() {
        assertThat(Light.lightness(0, 0, 0)).isEqualTo(0, within(1e-9));
        assertThat(Light.lightness(255, 255, 255)).isEqualTo(100, within(1e-6));
        assertThat(Light.lightness(255, 0, 0)).isEqualTo(53.24, within(0.02));
        assertThat(Light.lightness(0, 255, 0)).isEqualTo(87.73, within(0.02));
        assertThat(Light.lightness(0, 0, 255)).isEqualTo(32.30, within(0.02));
        assertThat(Light.lightness(119, 119, 119)).isEqualTo(50.03, within(0.02));
    }

    @Test
    void half_black_half_white_is_all_contrast() {
        byte[] samples = new byte[600];
        for (int i = 300; i < 600; i++) {
            samples[i] = (byte) 255;
        }
        Light light = Light.of(new Frame(20, 10, 3, samples));
        assertThat(light.darkShare()).isEqualTo(0.5);
        assertThat(light.contrast()).isEqualTo(100);
    }

    /** Pixel by pixel by the formula itself, sorted; shares of it are read off to a tenth. */
    @Test
    void a_whole_picture_is_counted_as_each_of_its_pixels_is() {
        Random random = new Random(4);
        byte[] samples = new byte[3 * 40_000];
        random.nextBytes(samples);
        for (int i = 0; i < samples.length; i += 3) {
            double darker = random.nextDouble();
            for (int c = 0; c < 3; c++) {
                samples[i + c] = (byte) ((samples[i + c] & 0xFF) * darker);
            }
        }
        double[] lightness = new double[samples.length / 3];
        for (int i = 0; i < lightness.length; i++) {
            double one = Light.lightness(samples[3 * i] & 0xFF, samples[3 * i + 1] & 0xFF, samples[3 * i + 2] & 0xFF);
            lightness[i] = Math.round(one * 10) / 10.0;
        }
        Arrays.sort(lightness);
        Light light = Light.of(new Frame(200, 200, 3, samples));
        assertThat(light.median()).isEqualTo(lightness[lightness.length / 2 - 1]);
        assertThat(light.contrast())
                .isEqualTo(lightness[lightness.length * 95 / 100 - 1] - lightness[lightness.length * 5 / 100 - 1]);
        assertThat(light.darkShare())
                .isEqualTo((double) Arrays.stream(lightness).filter(l -> l < 10).count() / lightness.length);
    }
}
