package puzzleworkshop.camera.rings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.camera.OutlineError;

@DisplayNameGeneration(ReplaceUnderscores.class)
class StraightEdgesTest {

    @Test
    void a_round_board_is_a_polygon_that_keeps_near_it_and_hardly_outside() {
        double[] round = new double[2 * 720];
        for (int i = 0; i < 720; i++) {
            double angle = i * Math.PI / 360;
            double far = 80 + 8 * Math.cos(3 * angle);
            round[2 * i] = far * Math.cos(angle);
            round[2 * i + 1] = far * Math.sin(angle);
        }
        for (int seed = 0; seed < 6; seed++) {
            double[] polygon = new StraightEdges(measured(round, 0.04, seed), 0.4).polygon();
            OutlineError error = OutlineError.between(round, polygon, 0);
            assertThat(error.largest()).as("%s", error).isLessThan(0.35);
            assertThat(error.outside()).as("%s", error).isLessThan(0.2);
        }
    }

    @Test
    void straight_edges_meet_in_their_corners_that_blur_has_rounded() {
        double[] board = {0, 0, 180, 0, 180, 60, 120, 100, 0, 100};
        for (int seed = 0; seed < 6; seed++) {
            double[] ring = Ring.smoothed(measured(board, 0.04, seed), 2);
            StraightEdges edges = new StraightEdges(ring, 0.4);
            assertThat(edges.corners).hasSize(5);
            assertThat(OutlineError.between(board, edges.polygon(), 0).largest())
                    .isLessThan(0.15);
        }
    }

    @Test
    void a_corner_that_is_too_round_to_be_sharp_turns_no_straight_edge() {
        // tips of 53 degrees beside a round bay, blurred
        List<Double> board = new ArrayList<>(List.of(0.0, 0.0));
        double lean = Math.asin(0.6);
        for (int i = 0; i <= 60; i++) {
            double a = Math.PI + lean - (Math.PI + 2 * lean) * i / 60;
            board.add(18 + 5 * Math.cos(a));
            board.add(3 + 5 * Math.sin(a));
        }
        board.addAll(List.of(60.0, 0.0, 60.0, 40.0, 0.0, 40.0));
        double[] truth = board.stream().mapToDouble(d -> d).toArray();
        for (int seed = 0; seed < 6; seed++) {
            double[] ring = Ring.smoothed(measured(truth, 0.03, seed), 8);
            double[] polygon = new StraightEdges(ring, 0.4).polygon();
            for (double x = 3; x < 11; x += 0.5) {
                assertThat(Lines.fromRing(polygon, x, 0)).isLessThan(0.1);
            }
        }
    }

    private static double[] measured(double[] ring, double scatter, int seed) {
        Random random = new Random(seed);
        double[] even = Ring.spaced(ring, Ring.SPACING);
        for (int i = 0; i < even.length; i++) {
            even[i] += scatter * random.nextGaussian();
        }
        return even;
    }
}
