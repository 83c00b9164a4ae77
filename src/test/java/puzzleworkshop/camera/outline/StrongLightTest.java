package puzzleworkshop.camera.outline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.DoubleStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.camera.OutlineError;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.camera.Scene;
import puzzleworkshop.measure.Refused;

/** One hard lamp from the side in a dark room: right, or no answer. 3 megapixels with known truth ({@link RenderedPhoto}). */
@Tag("slow")
@DisplayNameGeneration(ReplaceUnderscores.class)
class StrongLightTest {

    /** An egg: along it a shadow narrows to nothing, so somewhere it is as narrow as a block of the JPEG. */
    private static final double[] EGG = egg();

    private static double[] egg() {
        double[] ring = new double[240];
        for (int i = 0; i < 120; i++) {
            double a = i * Math.PI / 60;
            ring[2 * i] = 105 + (48 + 6 * Math.sin(a)) * Math.cos(a);
            ring[2 * i + 1] = 140 + 62 * Math.sin(a);
        }
        return ring;
    }

    private static Scene lamp(double[] outline, double thickness, double azimuth) {
        Scene scene = Scene.ofOneBoard(outline, thickness);
        scene.frame(-43.5, 43.5, 297, 210, 13, azimuth, 0.86);
        Scene.Board board = scene.boards.getFirst();
        board.colour = new double[] {0.30, 0.17, 0.10};
        board.wall = new double[] {0.2, 0.11, 0.06};
        scene.ambient = 0.15;
        scene.penumbra = 0.01;
        scene.light = new double[] {1000, -500, -450};
        scene.jpeg = 0.65f;
        scene.noise = 0.012;
        return scene;
    }

    private static OutlineError error(Scene scene, double[] outline) {
        double thickness = scene.boards.getFirst().thickness;
        FoundBoard board = BoardFinder.find(RenderedPhoto.photo(scene), thickness, 1)
                .boards()
                .getFirst();
        double[] found = board.outer().stream()
                .flatMapToDouble(s -> DoubleStream.of(s.xMm(), s.yMm()))
                .toArray();
        return OutlineError.between(outline, found, board.uncertaintyMm());
    }

    /** Its outer rim is a stronger step than the board's own edge beside it: the outline once followed it, 1.7 mm outside. */
    @Test
    void a_shadow_that_narrows_to_nothing_does_not_lead_the_edge_along() {
        for (double azimuth : new double[] {1, 2.6, 4.2}) {
            OutlineError error = error(lamp(EGG, 9, azimuth), EGG);
            assertThat(error.outside())
                    .as("mm outside, seen from %s: %s", azimuth, error)
                    .isLessThan(0.2);
            assertThat(error.p95()).as("seen from %s: %s", azimuth, error).isLessThan(0.8);
        }
    }

    /** Under a warm lamp the sky's light is blue in its shadow; all of that was once taken for board, 35 mm of it. */
    @Test
    void a_blue_shadow_is_no_board() {
        Scene scene = lamp(EGG, 12, 2.6);
        scene.ambientColour = new double[] {0.8, 1, 1.2};
        scene.lightColour = new double[] {1.12, 1, 0.86};
        OutlineError error = error(scene, EGG);
        assertThat(error.outside()).as("%s", error).isLessThan(0.2);
        assertThat(error.p95()).as("%s", error).isLessThan(0.8);
    }

    /** A saw leaves a wall that looks as the face does, so nothing tells whether it is seen: its foot counts in any case. */
    @Test
    void a_wall_that_looks_as_the_face_does_is_none_of_the_board() {
        double[] upright = {35, 70, 175, 70, 175, 220, 35, 220};
        Scene scene = Scene.ofOneBoard(upright, 6);
        scene.frame(-43.5, 43.5, 297, 210, 28, 0.4, 0.86);
        Scene.Board board = scene.boards.getFirst();
        board.colour = new double[] {0.45, 0.33, 0.2};
        board.wall = new double[] {0.6, 0.44, 0.267};
        board.grain = 0.1;
        OutlineError error = error(scene, upright);
        assertThat(error.outside()).as("%s", error).isLessThan(0.2);
        assertThat(error.p95()).as("%s", error).isLessThan(0.5);
    }

    @Test
    void wood_as_dark_as_its_own_deep_shadow_is_measured_right_or_refused_with_what_to_do_about_the_light() {
        for (double[] dark : new double[][] {{0.14, 0.085, 0.055}, {0.13, 0.105, 0.085}}) {
            Scene scene = lamp(EGG, 8, 2.6);
            scene.boards.getFirst().colour = dark;
            scene.boards.getFirst().wall = new double[] {0.6 * dark[0], 0.6 * dark[1], 0.6 * dark[2]};
            scene.ambient = 0.12;
            try {
                OutlineError error = error(scene, EGG);
                assertThat(error.outside()).as("%s: %s", dark, error).isLessThan(0.2);
            } catch (Refused no) {
                assertThat(no.sentence().key()).isEqualTo("camera.outline.shadow");
            }
        }
    }
}
