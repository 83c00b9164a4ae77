package puzzleworkshop.artwork.pixels;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Where a place of a turned picture lies is judged by the quarter turns of java.awt.geom.AffineTransform. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class MarkedSpotTest {

    private static final PixelSize PICTURE = new PixelSize() {
        @Override
        public int width() {
            return 1200;
        }

        @Override
        public int height() {
            return 800;
        }
    };

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void a_place_stays_on_what_it_was_put_on_however_the_picture_is_turned_and_framed(int turns) {
        MarkedSpot face = new MarkedSpot(0.3, 0.6, 0.05);
        // the middle of the turned picture stays in the middle; pixels, y down, clockwise as one sees it
        boolean across = turns % 2 == 0;
        AffineTransform turned = new AffineTransform();
        turned.translate(across ? 600 : 400, across ? 400 : 600);
        turned.quadrantRotate(turns);
        turned.translate(-600, -400);
        Point2D at = turned.transform(new Point2D.Double(0.3 * 1200, 0.6 * 800), null);
        Crop crop = new Crop(0.1, 0.2, 0.7, 0.5, turns, Crop.Fit.FILL, Crop.WHITE, Crop.Edge.MIRRORED);
        MarkedSpot.InFrame seen = face.in(crop, PICTURE);
        double width = across ? 1200 : 800;
        double height = across ? 800 : 1200;
        assertThat(seen.across()).isCloseTo((at.getX() / width - 0.1) / 0.7, within(1e-9));
        assertThat(seen.down()).isCloseTo((at.getY() / height - 0.2) / 0.5, within(1e-9));
        assertThat(seen.halfWidth()).isCloseTo(60 / (0.7 * width), within(1e-9));
        MarkedSpot back = MarkedSpot.of(seen, crop, PICTURE);
        assertThat(back.across()).isCloseTo(0.3, within(1e-9));
        assertThat(back.down()).isCloseTo(0.6, within(1e-9));
        assertThat(back.halfWidth()).isCloseTo(0.05, within(1e-9));
    }
}
