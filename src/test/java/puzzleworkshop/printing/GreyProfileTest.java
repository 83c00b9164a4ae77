package puzzleworkshop.printing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.color.ICC_ColorSpace;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.printing.pdf.GreyProfile;

/** Java's colour engine (Little CMS) reads the profile. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class GreyProfileTest {

    @Test
    void a_grey_means_the_same_grey_in_sRGB() {
        ICC_ColorSpace grey = new ICC_ColorSpace(GreyProfile.make());
        for (int step = 0; step <= 255; step += 5) {
            float[] rgb = grey.toRGB(new float[] {step / 255f});
            for (float channel : rgb) {
                assertThat(channel * 255).as("grey " + step).isEqualTo(step, within(1.1f));
            }
        }
    }
}
