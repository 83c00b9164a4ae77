package puzzleworkshop.artwork;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.Seeds;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class PicturesIT {

    @Autowired
    Pictures pictures;

    @Autowired
    JdbcClient jdbc;

    @Test
    void a_picture_is_kept_byte_for_byte_and_shown_smaller() throws Exception {
        byte[] jpeg =
                SamplePictures.withOrientation(SamplePictures.encode(SamplePictures.leaves(900, 600, 5), "jpg"), 6);
        Picture taken = pictures.take("../../holiday.jpg", new ByteArrayInputStream(jpeg));

        assertThat(taken.fileName()).isEqualTo("holiday.jpg");
        assertThat(pictures.get(taken.id()))
                .usingRecursiveComparison()
                .ignoringFields("receivedAt")
                .isEqualTo(taken);
        assertThat(taken.width()).isEqualTo(600);
        assertThat(taken.height()).isEqualTo(900);
        assertThat(taken.sha256())
                .isEqualTo(HexFormat.of()
                        .formatHex(MessageDigest.getInstance("SHA-256").digest(jpeg)));
        assertThat(pictures.original(taken.id()).readAllBytes()).isEqualTo(jpeg);

        Rendition card = pictures.rendition(taken.id(), 600).orElseThrow();
        BufferedImage shown = ImageIO.read(new ByteArrayInputStream(card.jpeg()));
        assertThat(card.px()).isEqualTo(640);
        assertThat(shown.getWidth()).isEqualTo(427).isEqualTo(card.width());
        assertThat(shown.getHeight()).isEqualTo(640);
    }

    /** Larger than several slices of the reading stream. */
    @Test
    void a_large_original_comes_back_whole() throws Exception {
        BufferedImage noise = new BufferedImage(1500, 1200, BufferedImage.TYPE_INT_RGB);
        Random random = new Random(Seeds.from(9));
        for (int y = 0; y < 1200; y++) {
            for (int x = 0; x < 1500; x++) {
                noise.setRGB(x, y, random.nextInt());
            }
        }
        byte[] png = SamplePictures.encode(noise, "png");
        assertThat(png.length).isGreaterThan(5 << 20);
        Picture taken = pictures.take("noise.png", new ByteArrayInputStream(png));
        assertThat(pictures.original(taken.id()).readAllBytes()).isEqualTo(png);
    }

    @Test
    void what_is_refused_leaves_nothing_behind() {
        int before =
                jdbc.sql("select count(*) from picture").query(Integer.class).single();
        assertThatThrownBy(() -> pictures.take("a.jpg", new ByteArrayInputStream("hello".getBytes())))
                .isInstanceOf(Refused.class);
        assertThat(jdbc.sql("select count(*) from picture").query(Integer.class).single())
                .isEqualTo(before);
    }

    @Test
    void see_through_parts_become_white_with_a_notice() throws Exception {
        BufferedImage image = new BufferedImage(40, 30, BufferedImage.TYPE_INT_ARGB);
        Picture taken = pictures.take("logo.png", new ByteArrayInputStream(SamplePictures.encode(image, "png")));
        assertThat(pictures.get(taken.id()).notices()).extracting("key").containsExactly("artwork.notice.alpha");
        BufferedImage shown = ImageIO.read(new ByteArrayInputStream(
                pictures.rendition(taken.id(), 240).orElseThrow().jpeg()));
        assertThat(shown.getRGB(20, 15) & 0xFFFFFF).isEqualTo(0xFFFFFF);
    }
}
