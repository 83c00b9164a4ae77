package puzzleworkshop.artwork.pixels;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.util.OptionalDouble;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import puzzleworkshop.artwork.SamplePictures;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FocusTest {

    @Test
    void a_sharp_scene_has_all_its_detail() {
        assertThat(share(SamplePictures.leaves(1200, 800, 7)).orElseThrow()).isGreaterThan(0.8);
    }

    @Test
    void a_few_sharp_edges_on_a_plain_ground_are_sharp() {
        BufferedImage plain = new BufferedImage(1200, 800, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = plain.createGraphics();
        g.setPaint(new java.awt.GradientPaint(0, 0, new Color(20, 30, 60), 0, 800, new Color(60, 80, 120)));
        g.fillRect(0, 0, 1200, 800);
        g.setColor(Color.ORANGE);
        for (int i = 0; i < 6; i++) {
            g.fillRect(101 + 180 * i, 503, 121, 87);
        }
        g.dispose();
        assertThat(share(plain).orElseThrow()).isGreaterThan(0.8);
    }

    /** Enlarged n times by smooth interpolation, a picture has an n-th of its pixels' detail. */
    @ParameterizedTest
    @ValueSource(ints = {4, 8})
    void an_enlarged_picture_is_found_out(int times) {
        BufferedImage small = SamplePictures.leaves(1600 / times, 1200 / times, 7);
        BufferedImage large = new BufferedImage(1600, 1200, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = large.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        g.drawImage(small, 0, 0, 1600, 1200, null);
        g.dispose();
        assertThat(share(large).orElseThrow()).isBetween(0.5 / times, 2.0 / times);
    }

    @Test
    void a_plain_surface_says_nothing() {
        assertThat(share(new BufferedImage(600, 400, BufferedImage.TYPE_INT_RGB)))
                .isEmpty();
    }

    static OptionalDouble share(BufferedImage image) {
        Focus focus = new Focus(3, image.getWidth(), image.getHeight());
        byte[] row = new byte[image.getWidth() * 3];
        for (int y = 0; y < image.getHeight(); y++) {
            for (int x = 0; x < image.getWidth(); x++) {
                int rgb = image.getRGB(x, y);
                row[3 * x] = (byte) (rgb >> 16);
                row[3 * x + 1] = (byte) (rgb >> 8);
                row[3 * x + 2] = (byte) rgb;
            }
            focus.row(y, row);
        }
        return focus.share();
    }
}
