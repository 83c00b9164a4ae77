package puzzleworkshop.geometry.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.geom.util.AffineTransformation;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.Seeds;

/**
 * Carver's condition for a rectangle in a rectangle at any angle (Problem E1225, American Mathematical Monthly 64,
 * 1957): p × q fits in a × b (p ≥ q, a ≥ b) if p ≤ a and q ≤ b, or p &gt; a, q ≤ b and
 * b ≥ (2pqa + (p² − q²)·√(p² + q² − a²)) / (p² + q²).
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class RectangleFitTest {

    private static final long SEED = 1957;

    static double carver(double p, double q, double a) {
        return (2 * p * q * a + (p * p - q * q) * Math.sqrt(p * p + q * q - a * a)) / (p * p + q * q);
    }

    @ParameterizedTest
    @CsvSource({"310,20,300,118.5034", "320,30,300,169.0760", "330,20,300,174.1382", "305,40,300,143.0656"})
    void a_bar_longer_than_the_board_fits_slantwise_from_carvers_width_on(double p, double q, double a, double b) {
        assertThat(RectanglePlaces.fits(Outline.rectangle(Size.mm(a, b + 0.02)), Size.mm(p, q)))
                .isTrue();
        assertThat(RectanglePlaces.fits(Outline.rectangle(Size.mm(a, b - 0.02)), Size.mm(p, q)))
                .isFalse();
    }

    @Test
    void ten_thousand_rectangles_around_carvers_limit_are_told_apart() {
        Random random = new Random(Seeds.from(SEED));
        for (int i = 0; i < 10_000; i++) {
            double a = 100 + 500 * random.nextDouble();
            double p = a * (1.001 + 0.12 * random.nextDouble());
            double q = 5 + 0.5 * a * random.nextDouble();
            double b = carver(p, q, a);
            if (b > a || b < q) {
                continue;
            }
            boolean fitting = random.nextBoolean();
            double board = fitting ? b + 0.02 + random.nextDouble() : b - 0.02 - random.nextDouble();
            if (board < q || board > a) {
                continue;
            }
            boolean found = RectanglePlaces.fits(Outline.rectangle(Size.mm(a, board)), Size.mm(p, q));
            assertThat(found)
                    .as("seed %d case %d: %s × %s in %s × %s", SEED, i, p, q, a, board)
                    .isEqualTo(fitting);
        }
    }

    @Test
    void a_rectangle_fits_in_itself_at_any_angle_of_the_board() {
        Random random = new Random(Seeds.from(SEED));
        for (int i = 0; i < 2_000; i++) {
            Size size = Size.mm(60 + 400 * random.nextDouble(), 50 + 300 * random.nextDouble());
            Placement lying = new Placement(0, 0, 180 * random.nextDouble());
            Outline board = Outline.of(lying.corners(size));
            assertThat(RectanglePlaces.fits(board, size))
                    .as("seed %d case %d", SEED, i)
                    .isTrue();
            Size wider = Size.mm(size.width().mm() + 0.01, size.height().mm());
            assertThat(RectanglePlaces.fitsAt(board, wider, lying.degrees())).isFalse();
        }
    }

    @Test
    void a_square_stands_at_the_right_angle_of_a_triangle_up_to_ab_over_a_plus_b() {
        Outline triangle = Outline.of(List.of(new Point(0, 0), new Point(400, 0), new Point(0, 300)));
        double side = 400.0 * 300 / 700;
        assertThat(RectanglePlaces.fits(triangle, Size.mm(side, side))).isTrue();
        assertThat(RectanglePlaces.fits(triangle, Size.mm(side + 0.01, side + 0.01)))
                .isFalse();
    }

    /** JTS judges: what is said to lie in a rectangle at every angle of a range does so, for long thin ones too. */
    @Test
    void what_a_turned_rectangle_has_in_common_lies_in_it_at_every_angle() {
        for (double longer : new double[] {100, 200, 340, 500, 900}) {
            for (double degrees : new double[] {0.7, 3, 5.625, 11.25}) {
                double w = RectangleFit.shrunk(longer, 100, degrees);
                double h = RectangleFit.shrunk(100, longer, degrees);
                for (double angle = -degrees; h > 0 && angle <= degrees; angle += degrees / 20) {
                    Geometry turned = AffineTransformation.rotationInstance(Math.toRadians(angle))
                            .transform(box(longer + 1e-6, 100 + 1e-6));
                    assertThat(turned.covers(box(w, h)))
                            .as("%s × 100 by %s°: %s × %s at %s°", longer, degrees, w, h, angle)
                            .isTrue();
                }
            }
        }
    }

    private static Geometry box(double w, double h) {
        return new GeometryFactory().toGeometry(new Envelope(-w / 2, w / 2, -h / 2, h / 2));
    }

    @Test
    void a_long_thin_bar_is_found_in_a_board_hardly_larger() {
        Outline board = Outline.of(new Placement(0, 0, 11.25).corners(Size.mm(297.05, 84.05)), List.of());
        assertThat(new RectangleFit().place(board.segments(), 297, 84, new double[0]))
                .isPresent();
    }
}
