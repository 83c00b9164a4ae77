package puzzleworkshop.geometry.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/** Closed forms: a right triangle with legs a, b holds a·b/4; an ellipse 2ab; a square on its corner half its area. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LargestRectangleTest {

    private static final Outline TRIANGLE = Outline.of(List.of(new Point(0, 0), new Point(400, 0), new Point(0, 300)));

    @Test
    void half_of_a_right_triangle_is_its_largest_rectangle() {
        assertThat(area(TRIANGLE, 0)).isCloseTo(30_000, within(0.01));
        double hypotenuse = Math.toDegrees(Math.atan2(-300, 400)) + 90;
        assertThat(area(TRIANGLE, hypotenuse)).isCloseTo(30_000, within(0.01));
    }

    @Test
    void the_rectangle_along_the_legs_is_200_by_150() {
        var size = LargestRectangle.in(TRIANGLE, 0.0).orElseThrow().size();
        assertThat(size.width().mm()).isCloseTo(200, within(0.01));
        assertThat(size.height().mm()).isCloseTo(150, within(0.01));
    }

    @Test
    void an_ellipse_holds_twice_the_product_of_its_half_axes() {
        List<Point> ring = new ArrayList<>();
        for (int i = 0; i < 720; i++) {
            double turn = Math.PI * i / 360;
            ring.add(new Point(200 * Math.cos(turn), 100 * Math.sin(turn)));
        }
        var size = LargestRectangle.in(Outline.of(ring), 0.0).orElseThrow().size();
        assertThat(size.area().mm2()).isCloseTo(2 * 200 * 100, within(4.0));
        assertThat(size.width().mm()).isCloseTo(282.843, within(0.5));
        assertThat(size.height().mm()).isCloseTo(141.421, within(0.5));
    }

    @Test
    void a_square_on_its_corner_holds_an_upright_square_of_half_its_diagonal() {
        Outline square =
                Outline.of(List.of(new Point(200, 0), new Point(400, 200), new Point(200, 400), new Point(0, 200)));
        var upright = LargestRectangle.in(square, 0.0).orElseThrow().size();
        assertThat(upright.width().mm()).isCloseTo(200, within(0.01));
        assertThat(upright.height().mm()).isCloseTo(200, within(0.01));
        assertThat(area(square, 45)).isCloseTo(80_000, within(0.01));
    }

    /** What is left of 480 × 310 mm with a knot after 322 × 222 mm: its long arm is larger but too thin to be of use. */
    @Test
    void a_remainder_shows_its_useful_rectangle_even_where_a_thinner_one_is_larger() {
        Outline board = Outline.of(
                List.of(new Point(0, 0), new Point(480, 0), new Point(480, 310), new Point(0, 310)),
                List.of(List.of(new Point(350, 60), new Point(385, 55), new Point(395, 90), new Point(360, 100))));
        UsefulSizes sizes =
                new UsefulSizes(Size.mm(120, 90), UsefulSizes.common().rungs());
        Remainder rest = Remainder.after(board, Size.mm(322, 222), new Placement(0, 0, 0), Length.mm(0.2), sizes);
        assertThat(rest.parts()).hasSize(1);
        assertThat(rest.parts().getFirst().useful()).isNotEmpty().allSatisfy(useful -> {
            assertThat(sizes.rung(0).fitsUpright(useful.size())).isTrue();
            assertThat(rest.parts()
                            .getFirst()
                            .outline()
                            .free()
                            .buffer(0.01)
                            .covers(useful.placement().polygon(useful.size(), 0)))
                    .as("JTS: %s lies inside", useful)
                    .isTrue();
        });
        // the short arm below the knot's lowest corner is 157.8 × 210 mm
        assertThat(rest.largest().orElseThrow().size().area().mm2()).isCloseTo(157.8 * 210, within(1.0));
    }

    @Test
    void an_l_shape_gives_the_larger_arm() {
        Outline shape = Outline.of(List.of(
                new Point(0, 0),
                new Point(500, 0),
                new Point(500, 200),
                new Point(150, 200),
                new Point(150, 600),
                new Point(0, 600)));
        assertThat(area(shape, 0)).isCloseTo(500 * 200, within(0.01));
    }

    @Test
    void a_bad_area_in_the_middle_is_gone_around() {
        Outline board = Outline.of(
                List.of(new Point(0, 0), new Point(300, 0), new Point(300, 200), new Point(0, 200)),
                List.of(List.of(new Point(140, 90), new Point(160, 90), new Point(160, 110), new Point(140, 110))));
        assertThat(area(board, 0)).isCloseTo(140 * 200, within(0.01));
    }

    private static double area(Outline outline, double degrees) {
        return LargestRectangle.in(outline, degrees).orElseThrow().size().area().mm2();
    }
}
