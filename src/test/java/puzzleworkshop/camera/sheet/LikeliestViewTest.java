package puzzleworkshop.camera.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.camera.model.Lens;
import puzzleworkshop.camera.model.View;

/** A photo that has lost what its camera said of the lens, as messengers send them on. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LikeliestViewTest {

    private static final int WIDE = 4032;
    private static final int HIGH = 3024;

    @Test
    void the_phone_has_a_wide_lens_and_one_that_brings_things_nearer_and_each_is_known_by_its_picture() {
        for (double focal : new double[] {0.39, 0.75, 1.6}) {
            View view = view(focal, Math.toRadians(18));
            LikeliestView found = found(view, 7);
            assertThat(found.fit.view(found.fit.best).focal() / WIDE).isCloseTo(focal, within(0.03 * focal));
            assertThat(errorAtHeight(view, found)).isLessThan(0.1);
        }
    }

    @Test
    void from_straight_above_no_photo_tells_its_lens_so_the_doubt_holds_what_the_others_would_say() {
        View view = view(0.75, 0);
        LikeliestView found = found(view, 3);
        LikeliestView told = new LikeliestView(LensGuess.of(0.75), guess -> fit(view, 3, guess));
        assertThat(found.doubt(300, 300, -9)).isGreaterThan(1.5 * told.doubt(300, 300, -9));
    }

    private static double errorAtHeight(View view, LikeliestView found) {
        double[] uv = new double[2];
        double[] back = new double[2];
        double worst = 0;
        for (double[] at : new double[][] {{40, 60}, {170, 60}, {170, 240}, {40, 240}, {105, 150}}) {
            view.project(at[0], at[1], -4, uv);
            found.fit.view(found.fit.best).onPlane(uv[0], uv[1], -4, back);
            worst = Math.max(worst, Math.hypot(back[0] - at[0], back[1] - at[1]));
        }
        return worst;
    }

    private static View view(double focal, double tilt) {
        double far = focal * WIDE * 300 / HIGH * 1.25;
        double c = Math.cos(tilt);
        double s = Math.sin(tilt);
        double[] turn = {0, 1, 0, -c, 0, s, s, 0, c};
        double[] shift = new double[3];
        double[] middle = {105, 148.5, 0};
        for (int i = 0; i < 3; i++) {
            shift[i] = (i == 2 ? far : 0) - turn[3 * i] * middle[0] - turn[3 * i + 1] * middle[1];
        }
        return new View(
                focal * WIDE, WIDE / 2.0 + 9, HIGH / 2.0 - 6, new Lens(0.02, -0.01, 0.0004, -0.0003), turn, shift);
    }

    private static LikeliestView found(View view, int seed) {
        return new LikeliestView(LensGuess.of(Double.NaN), guess -> fit(view, seed, guess));
    }

    private static ViewFit fit(View view, int seed, LensGuess guess) {
        Random random = new Random(seed);
        List<double[]> corners = new ArrayList<>();
        for (Marker marker : MeasuringSheet.A4.markers(0)) {
            for (int i = 0; i < 8; i += 2) {
                double[] uv = new double[2];
                double x = marker.corners()[i];
                double y = marker.corners()[i + 1];
                view.project(x, y, 0, uv);
                corners.add(
                        new double[] {x, y, uv[0] + 0.08 * random.nextGaussian(), uv[1] + 0.08 * random.nextGaussian()
                        });
            }
        }
        double[] known = corners.stream()
                .flatMapToDouble(c -> java.util.stream.DoubleStream.of(c[0], c[1]))
                .toArray();
        double[] seen = corners.stream()
                .flatMapToDouble(c -> java.util.stream.DoubleStream.of(c[2], c[3]))
                .toArray();
        return new ViewFit(known, seen, new int[corners.size()], 1, WIDE, HIGH, guess);
    }
}
