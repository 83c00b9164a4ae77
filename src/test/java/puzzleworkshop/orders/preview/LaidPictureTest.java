package puzzleworkshop.orders.preview;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.artwork.PictureId;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.pixels.PixelSize;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.pattern.KeptWhole;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LaidPictureTest {

    private record Pixels(int width, int height) implements PixelSize {}

    private static final PixelSize PIXELS = new Pixels(4000, 3000);
    private static final PictureId PICTURE = new PictureId(new UUID(1, 2));

    /** By hand: a pixel is 0.1 mm before; then 1500 by 1125 pixels, from (2000, 750) on, are 400 mm wide. */
    @Test
    void what_is_marked_grows_with_the_picture_when_a_part_of_it_fills_the_puzzle() {
        LaidPicture whole = laid(crop(0, 0, 1, 1, 0), Size.mm(400, 300));
        LaidPicture part = laid(crop(0.5, 0.25, 0.375, 0.375, 0), Size.mm(400, 300));
        KeptWhole carried = whole.carried(new KeptWhole(Point.of(275, 131.25), 12, 15), part);
        assertThat(carried.middle().xMm()).isCloseTo(200, within(1e-9));
        assertThat(carried.middle().yMm()).isCloseTo(150, within(1e-9));
        assertThat(carried.halfWidthMm()).isCloseTo(32, within(1e-9));
        assertThat(carried.halfHeightMm()).isCloseTo(40, within(1e-9));
    }

    /** By hand: what is at the top left of the upright picture is at the top right after a quarter turn clockwise. */
    @Test
    void a_quarter_turn_of_the_picture_lays_what_is_marked_on_its_side() {
        LaidPicture upright = laid(crop(0, 0, 1, 1, 0), Size.mm(400, 300));
        LaidPicture turned = laid(crop(0, 0, 1, 1, 1), Size.mm(300, 400));
        KeptWhole carried = upright.carried(new KeptWhole(Point.of(40, 30), 10, 13), turned);
        assertThat(carried.middle().xMm()).isCloseTo(270, within(1e-9));
        assertThat(carried.middle().yMm()).isCloseTo(40, within(1e-9));
        assertThat(carried.halfWidthMm()).isCloseTo(13, within(1e-9));
        assertThat(carried.halfHeightMm()).isCloseTo(10, within(1e-9));
    }

    @Test
    void an_edge_goes_where_its_place_goes_and_comes_back() {
        Random random = new Random(7);
        for (int i = 0; i < 200; i++) {
            LaidPicture one = any(random);
            LaidPicture other = any(random);
            KeptWhole place = new KeptWhole(
                    Point.of(50 + 200 * random.nextDouble(), 50 + 100 * random.nextDouble()),
                    5 + 20 * random.nextDouble(),
                    5 + 20 * random.nextDouble());
            CurvePath edge = place.outline().transformed(one.movement(other));
            Bounds bounds = edge.bounds();
            KeptWhole carried = one.carried(place, other);
            assertThat(bounds.centre().distanceTo(carried.middle()))
                    .as("case %d of seed 7", i)
                    .isLessThan(1e-6);
            assertThat(bounds.width()).isCloseTo(2 * carried.halfWidthMm(), within(1e-6));
            assertThat(bounds.height()).isCloseTo(2 * carried.halfHeightMm(), within(1e-6));
            Point back = edge.transformed(other.movement(one)).start();
            assertThat(back.distanceTo(place.outline().start())).isLessThan(1e-6);
        }
    }

    private static LaidPicture any(Random random) {
        double aspect = 0.6 + random.nextDouble();
        Crop filling = Crop.filling(PIXELS, aspect, random.nextInt(4));
        double share = 0.3 + 0.7 * random.nextDouble();
        Crop crop = crop(
                filling.left() + (1 - share) * filling.width() * random.nextDouble(),
                filling.top() + (1 - share) * filling.height() * random.nextDouble(),
                share * filling.width(),
                share * filling.height(),
                filling.quarterTurns());
        double width = 150 + 300 * random.nextDouble();
        return laid(crop, Size.mm(width, width / aspect));
    }

    private static LaidPicture laid(Crop crop, Size finished) {
        return new LaidPicture(new FramedPicture(PICTURE, crop), PIXELS, finished);
    }

    private static Crop crop(double left, double top, double width, double height, int turns) {
        return new Crop(left, top, width, height, turns, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED);
    }
}
