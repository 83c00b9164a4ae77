package puzzleworkshop.artwork.pixels;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

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
}
