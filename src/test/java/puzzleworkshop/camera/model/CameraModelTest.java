package puzzleworkshop.camera.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.SingularValueDecomposition;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CameraModelTest {

    /** Method: P. S. Heckbert, Fundamentals of Texture Mapping and Image Warping (1989), 2.2.3; numbers computed by hand. */
    @Test
    void a_square_goes_to_a_quadrilateral_as_heckbert_maps_it() {
        Homography map =
                Homography.between(new double[] {0, 0, 1, 0, 1, 1, 0, 1}, new double[] {0, 0, 4, 1, 6, 5, 1, 4});
        double[] expected = {4.2222, 0.7778, 0, 1.0556, 3.1111, 0, 0.0556, -0.2222, 1};
        for (int i = 0; i < 9; i++) {
            assertThat(map.h()[i]).isCloseTo(expected[i], within(5e-5));
        }
        double[] out = new double[2];
        map.map(0.5, 0.5, out);
        assertThat(out[0]).isCloseTo(2.7273, within(5e-5));
        assertThat(out[1]).isCloseTo(2.2727, within(5e-5));
        map.inverse().map(out[0], out[1], out);
        assertThat(out[0]).isCloseTo(0.5, within(1e-9));
    }

    /** Brown 1966 and Conrady 1919 in the order of terms that OpenCV documents; numbers from memory, computed again. */
    @Test
    void a_lens_distorts_as_brown_and_conrady_say() {
        Lens lens = new Lens(-0.1, 0.02, 0.001, -0.0005);
        double[] out = new double[2];
        lens.distort(0.3, -0.2, out);
        assertThat(out[0]).isCloseTo(0.2959264, within(1e-7));
        assertThat(out[1]).isCloseTo(-0.1971976, within(1e-7));
    }

    @Test
    void what_a_lens_distorts_is_turned_back() {
        long seed = 20261129;
        Random random = new Random(seed);
        double[] out = new double[2];
        for (int i = 0; i < 5000; i++) {
            Lens lens = new Lens(
                    0.2 * (random.nextDouble() - 0.5),
                    0.2 * (random.nextDouble() - 0.5),
                    0.01 * (random.nextDouble() - 0.5),
                    0.01 * (random.nextDouble() - 0.5));
            double x = random.nextDouble() - 0.5;
            double y = random.nextDouble() - 0.5;
            lens.distort(x, y, out);
            lens.undistort(out[0], out[1], out);
            assertThat(out[0]).as("seed %d case %d", seed, i).isCloseTo(x, within(1e-9));
            assertThat(out[1]).as("seed %d case %d", seed, i).isCloseTo(y, within(1e-9));
        }
    }

    /**
     * S. Umeyama, Least-squares estimation of transformation parameters between two point patterns, IEEE PAMI 13(4), 1991, the
     * example of section IV; numbers from memory, computed again.
     */
    @Test
    void points_are_laid_on_points_as_in_umeyamas_example() {
        RigidFit fit = RigidFit.similar(new double[] {0, 0, 1, 0, 0, 2}, new double[] {0, 0, -1, 0, 0, 2});
        assertThat(fit.scale()).isCloseTo(0.721, within(5e-4));
        assertThat(fit.cos()).isCloseTo(0.832, within(5e-4));
        assertThat(fit.sin()).isCloseTo(-0.555, within(5e-4));
        assertThat(fit.shiftX()).isCloseTo(-0.8, within(5e-4));
        assertThat(fit.shiftY()).isCloseTo(0.4, within(5e-4));
        assertThat(fit.meanSquaredError()).isCloseTo(0.5333, within(5e-5));
    }

    /** Umeyama's method by singular values with Commons Math, against the closed form for the plane. */
    @Test
    void the_closed_form_agrees_with_singular_values_from_a_library() {
        long seed = 7;
        Random random = new Random(seed);
        for (int round = 0; round < 300; round++) {
            int n = 3 + random.nextInt(20);
            double[] from = random.doubles(2L * n, -100, 100).toArray();
            double[] to = random.doubles(2L * n, -100, 100).toArray();
            RealMatrix cross = new Array2DRowRealMatrix(2, 2);
            double[] a = mean(from);
            double[] b = mean(to);
            for (int i = 0; i < n; i++) {
                for (int r = 0; r < 2; r++) {
                    for (int c = 0; c < 2; c++) {
                        cross.addToEntry(r, c, (to[2 * i + r] - b[r]) * (from[2 * i + c] - a[c]) / n);
                    }
                }
            }
            SingularValueDecomposition parts = new SingularValueDecomposition(cross);
            RealMatrix s = new Array2DRowRealMatrix(new double[][] {{1, 0}, {0, det(cross) < 0 ? -1 : 1}});
            RealMatrix turn = parts.getU().multiply(s).multiply(parts.getVT());
            if (det(turn) < 0) {
                s.setEntry(1, 1, -s.getEntry(1, 1));
                turn = parts.getU().multiply(s).multiply(parts.getVT());
            }
            RigidFit fit = RigidFit.rigid(from, to);
            assertThat(fit.cos()).as("seed %d round %d", seed, round).isCloseTo(turn.getEntry(0, 0), within(1e-7));
            assertThat(fit.sin()).as("seed %d round %d", seed, round).isCloseTo(turn.getEntry(1, 0), within(1e-7));
        }
    }

    private static double[] mean(double[] points) {
        double[] mean = new double[2];
        for (int i = 0; i < points.length; i++) {
            mean[i % 2] += 2 * points[i] / points.length;
        }
        return mean;
    }

    private static double det(RealMatrix m) {
        return m.getEntry(0, 0) * m.getEntry(1, 1) - m.getEntry(0, 1) * m.getEntry(1, 0);
    }

    @Test
    void a_point_seen_is_found_again_on_its_plane() {
        View view = new View(
                3100, 2010, 1490, new Lens(0.05, -0.03, 0.0004, 0.0007), View.rotation(0.4, -0.2, 1.1), new double[] {
                    -100, -80, 600
                });
        double[] out = new double[2];
        for (double z : new double[] {0, -3, -18}) {
            assertThat(view.project(120, 90, z, out)).isTrue();
            view.onPlane(out[0], out[1], z, out);
            assertThat(out[0]).isCloseTo(120, within(1e-6));
            assertThat(out[1]).isCloseTo(90, within(1e-6));
        }
    }
}
