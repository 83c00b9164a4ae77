package puzzleworkshop.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(ReplaceUnderscores.class)
class MarkingOutTest {

    @Test
    void a_corner_at_90_and_120_lies_150_from_the_corner_of_the_board() {
        // The right triangle 3, 4, 5 (Euclid, Elements I.47), times thirty; from the other end √(210² + 120²).
        MarkingOut marks =
                MarkingOut.of(Outline.rectangle(Size.mm(300, 200)), new Placement(90, 120, 30), Size.mm(60, 40));
        MarkingOut.Corner first = marks.corners().getFirst();
        double one = first.fromA().mm();
        double other = first.fromB().mm();
        assertThat(Math.min(one, other)).isCloseTo(150, within(1e-9));
        assertThat(Math.max(one, other)).isCloseTo(241.8677324489565, within(1e-9));
    }

    /** Where two circles meet, by their radical line: textbook geometry, written here once more. */
    @Test
    void the_arcs_meet_in_the_corner_that_they_are_for() {
        Random random = new Random(Seeds.from(41));
        for (int n = 0; n < 2_000; n++) {
            Outline board = Outline.rectangle(Size.mm(200 + random.nextInt(800), 150 + random.nextInt(500)));
            Placement placement =
                    new Placement(random.nextDouble() * 200, random.nextDouble() * 100, random.nextDouble() * 180);
            MarkingOut marks = MarkingOut.of(board, placement, Size.mm(120, 80));
            double d = marks.a().distanceTo(marks.b());
            for (MarkingOut.Corner corner : marks.corners()) {
                double along = (d * d
                                + corner.fromA().mm() * corner.fromA().mm()
                                - corner.fromB().mm() * corner.fromB().mm())
                        / (2 * d);
                double across = Math.sqrt(
                        Math.max(0, corner.fromA().mm() * corner.fromA().mm() - along * along));
                double ux = (marks.b().xMm() - marks.a().xMm()) / d;
                double uy = (marks.b().yMm() - marks.a().yMm()) / d;
                Point one = new Point(
                        marks.a().xMm() + along * ux - across * uy, marks.a().yMm() + along * uy + across * ux);
                Point two = new Point(
                        marks.a().xMm() + along * ux + across * uy, marks.a().yMm() + along * uy - across * ux);
                assertThat(Math.min(one.distanceTo(corner.at()), two.distanceTo(corner.at())))
                        .isLessThan(1e-6);
            }
        }
    }
}
