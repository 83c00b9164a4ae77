package puzzleworkshop.artwork.pixels;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

@DisplayNameGeneration(ReplaceUnderscores.class)
class FramingTest {

    private static final Frame NOISE = noise(60, 40, 3);

    @Test
    void a_whole_picture_at_its_own_size_comes_back_pixel_for_pixel() {
        Framing framing = Framing.of(NOISE, whole(0), 60, 40, 0);
        for (int y = 0; y < 40; y++) {
            assertThat(framing.row(y)).isEqualTo(Arrays.copyOfRange(NOISE.samples(), y * 180, y * 180 + 180));
        }
    }

    /** The colours that the JDK gives of an image, pixel by pixel. */
    @ParameterizedTest
    @ValueSource(ints = {BufferedImage.TYPE_3BYTE_BGR, BufferedImage.TYPE_INT_RGB, BufferedImage.TYPE_4BYTE_ABGR})
    void an_image_is_read_and_drawn_with_the_colours_it_shows(int type) {
        BufferedImage image = new BufferedImage(60, 40, type);
        for (int y = 0; y < 40; y++) {
            for (int x = 0; x < 60; x++) {
                int at = (y * 60 + x) * 3;
                int rgb = (NOISE.samples()[at] & 0xFF) << 16
                        | (NOISE.samples()[at + 1] & 0xFF) << 8
                        | NOISE.samples()[at + 2] & 0xFF;
                image.setRGB(x, y, 0xFF000000 | rgb);
            }
        }
        assertThat(Frame.of(image).samples()).isEqualTo(NOISE.samples());
        BufferedImage drawn = Framing.of(NOISE, whole(0), 60, 40, 0).image();
        assertThat(drawn.getRGB(0, 0, 60, 40, null, 0, 60)).isEqualTo(image.getRGB(0, 0, 60, 40, null, 0, 60));
    }

    /** Clockwise: the corner that was top left is then top right, bottom right, bottom left. */
    @ParameterizedTest
    @CsvSource({"0,0,0", "1,39,0", "2,59,39", "3,0,59"})
    void quarter_turns_go_clockwise(int turns, int x, int y) {
        boolean lying = turns % 2 == 1;
        Framing framing = Framing.of(NOISE, whole(turns), lying ? 40 : 60, lying ? 60 : 40, 0);
        assertThat(pixel(framing, x, y)).isEqualTo(pixel(NOISE, 0, 0));
    }

    /** Stored in each of the eight EXIF ways and shown turned in each of the four: all pixels where they belong. */
    @Test
    void every_way_of_storing_and_turning_gives_the_same_picture() {
        for (int exif = 1; exif <= 8; exif++) {
            Orientation orientation = new Orientation(exif, exif >= 5 ? 130 : 70, exif >= 5 ? 70 : 130);
            Frame stored = noise(orientation.storedWidth(), orientation.storedHeight(), exif);
            Frame upright = stored.upright(exif);
            for (int turns = 0; turns < 4; turns++) {
                TurnedRows rows = new TurnedPixels(
                        stored.width(),
                        stored.height(),
                        3,
                        exif,
                        turns,
                        (index, length, into, at) -> System.arraycopy(stored.samples(), index, into, at, length));
                TurnedRows expected = TurnedRows.of(upright, turns);
                assertThat(rows.width()).isEqualTo(turns % 2 == 0 ? 70 : 130);
                for (int y = 0; y < rows.height(); y++) {
                    assertThat(rows.row(y))
                            .as("exif %d turns %d row %d", exif, turns, y)
                            .isEqualTo(expected.row(y));
                }
            }
        }
    }

    @Test
    void the_overhang_shows_the_picture_around_the_frame_where_there_is_some() {
        Crop middle =
                new Crop(10 / 60.0, 10 / 40.0, 40 / 60.0, 20 / 40.0, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED);
        Framing framing = Framing.of(NOISE, middle, 40, 20, 4);
        assertThat(framing.width()).isEqualTo(48);
        assertThat(framing.height()).isEqualTo(28);
        assertThat(pixel(framing, 0, 0)).isEqualTo(pixel(NOISE, 6, 6));
        assertThat(pixel(framing, 47, 27)).isEqualTo(pixel(NOISE, 53, 33));
    }

    @Test
    void beyond_the_picture_the_overhang_is_folded_back_or_drawn_on() {
        Framing mirrored = Framing.of(NOISE, whole(0), 60, 40, 5);
        assertThat(pixel(mirrored, 4, 20)).isEqualTo(pixel(NOISE, 0, 15));
        assertThat(pixel(mirrored, 0, 20)).isEqualTo(pixel(NOISE, 4, 15));
        assertThat(pixel(mirrored, 69, 49)).isEqualTo(pixel(NOISE, 55, 35));
        Crop extended = new Crop(0, 0, 1, 1, 0, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.EXTENDED);
        assertThat(pixel(Framing.of(NOISE, extended, 60, 40, 5), 0, 20)).isEqualTo(pixel(NOISE, 0, 15));
    }

    @Test
    void a_fitted_picture_has_a_border_and_its_overhang_goes_on_in_kind() {
        Crop fitted = new Crop(0, -0.25, 1, 1.5, 0, Crop.Fit.FIT, "#204060", Crop.Edge.MIRRORED);
        Framing framing = Framing.of(NOISE, fitted, 60, 60, 6);
        assertThat(pixel(framing, 30, 0)).containsExactly(0x20, 0x40, 0x60);
        assertThat(pixel(framing, 30, 15)).containsExactly(0x20, 0x40, 0x60);
        assertThat(pixel(framing, 6, 6 + 10)).isEqualTo(pixel(NOISE, 0, 0));
        // The picture reaches the left edge of the frame: no stripe of border beside it, it is folded out.
        assertThat(pixel(framing, 5, 6 + 10)).isEqualTo(pixel(NOISE, 0, 0));
        assertThat(pixel(framing, 0, 6 + 10)).isEqualTo(pixel(NOISE, 5, 0));
    }

    @Test
    void a_smaller_one_is_the_mean_of_what_it_covers() {
        Framing framing = Framing.of(NOISE, whole(0), 6, 4, 0);
        for (int c = 0; c < 3; c++) {
            double sum = 0;
            for (int y = 10; y < 20; y++) {
                for (int x = 20; x < 30; x++) {
                    sum += pixel(NOISE, x, y)[c];
                }
            }
            assertThat((double) pixel(framing, 2, 1)[c]).isBetween(sum / 100 - 0.6, sum / 100 + 0.6);
        }
    }

    private static Crop whole(int turns) {
        return new Crop(0, 0, 1, 1, turns, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED);
    }

    private static int[] pixel(Framing framing, int x, int y) {
        byte[] row = framing.row(y);
        return new int[] {row[x * 3] & 0xFF, row[x * 3 + 1] & 0xFF, row[x * 3 + 2] & 0xFF};
    }

    private static int[] pixel(Frame frame, int x, int y) {
        int at = (y * frame.width() + x) * 3;
        return new int[] {frame.samples()[at] & 0xFF, frame.samples()[at + 1] & 0xFF, frame.samples()[at + 2] & 0xFF};
    }

    private static Frame noise(int width, int height, long seed) {
        byte[] samples = new byte[width * height * 3];
        new Random(seed).nextBytes(samples);
        return new Frame(width, height, 3, samples);
    }
}
