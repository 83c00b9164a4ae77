package puzzleworkshop.papers.drawn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class LogoTest {

    @Test
    void a_png_keeps_its_transparency_and_is_made_fit_for_paper() throws IOException {
        BufferedImage kept = read(Logo.of(file(picture(2500, 500, BufferedImage.TYPE_INT_ARGB), "png")));
        assertThat(kept.getWidth()).isEqualTo(1250);
        assertThat(kept.getHeight()).isEqualTo(250);
        assertThat(kept.getRGB(2, 2) >>> 24).isZero();
        assertThat(new Color(kept.getRGB(625, 125))).isEqualTo(new Color(0x0F5C57));
    }

    @Test
    void a_jpeg_is_taken_and_a_small_one_keeps_its_pixels() throws IOException {
        BufferedImage kept = read(Logo.of(file(picture(300, 100, BufferedImage.TYPE_INT_RGB), "jpg")));
        assertThat(kept.getWidth()).isEqualTo(300);
        assertThat(kept.getHeight()).isEqualTo(100);
    }

    @Test
    void refuses_other_formats_whatever_their_name_says() throws IOException {
        refused("only named like a picture".getBytes(StandardCharsets.UTF_8), "papers.settings.logo");
        refused(new byte[0], "papers.settings.logo");
        refused(file(picture(30, 10, BufferedImage.TYPE_INT_RGB), "gif"), "papers.settings.logo");
        refused(file(picture(30, 10, BufferedImage.TYPE_INT_RGB), "bmp"), "papers.settings.logo");
        byte[] cut = file(picture(300, 100, BufferedImage.TYPE_INT_RGB), "png");
        refused(java.util.Arrays.copyOf(cut, cut.length / 3), "papers.settings.logo");
    }

    @Test
    void refuses_a_heavy_file_and_a_small_file_that_unpacks_to_a_huge_picture() throws IOException {
        BufferedImage noise = new BufferedImage(700, 700, BufferedImage.TYPE_INT_RGB);
        Random random = new Random(Seeds.from(3));
        for (int i = 0; i < 490_000; i++) {
            noise.setRGB(i % 700, i / 700, random.nextInt());
        }
        byte[] heavy = file(noise, "png");
        assertThat(heavy.length).isGreaterThan(Logo.MOST_BYTES);
        refused(heavy, "papers.settings.logo");
        byte[] huge = file(new BufferedImage(20_000, 6_100, BufferedImage.TYPE_BYTE_BINARY), "png");
        assertThat(huge.length).isLessThan(100_000);
        refused(huge, "papers.settings.logo.side");
    }

    private static void refused(byte[] file, String key) {
        assertThatThrownBy(() -> Logo.of(file)).isInstanceOf(Refused.class).hasMessageContaining(key);
    }

    private static BufferedImage picture(int width, int height, int type) {
        BufferedImage picture = new BufferedImage(width, height, type);
        Graphics2D graphics = picture.createGraphics();
        graphics.setColor(new Color(0x0F5C57));
        graphics.fillOval(0, 0, width, height);
        graphics.dispose();
        return picture;
    }

    private static byte[] file(BufferedImage picture, String format) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertThat(ImageIO.write(picture, format, out)).isTrue();
        return out.toByteArray();
    }

    private static BufferedImage read(byte[] png) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(png));
    }
}
