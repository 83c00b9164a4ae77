package puzzleworkshop.camera.outline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.camera.OutlineError;
import puzzleworkshop.camera.PhoneLook;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.camera.Scene;
import puzzleworkshop.camera.sheet.MeasuringSheet;
import puzzleworkshop.camera.traced.TracedPhoto;
import puzzleworkshop.camera.traced.TracedScene;

/** Judged by rendered photos with known truth (the camera model is written down in {@link RenderedPhoto}); 3 megapixels. */
@Tag("slow")
@DisplayNameGeneration(ReplaceUnderscores.class)
class BoardFinderTest {

    private static final double[] BOARD = {40, 60, 165, 66, 170, 150, 120, 152, 118, 230, 45, 226};

    private static final double[] UPRIGHT = {35, 70, 175, 70, 175, 220, 35, 220};

    private static Scene scene(double thickness) {
        return Scene.ofOneBoard(BOARD, thickness);
    }

    private static double[] ring(FoundBoard board) {
        return board.outer().stream()
                .flatMapToDouble(s -> DoubleStream.of(s.xMm(), s.yMm()))
                .toArray();
    }

    @Test
    void an_offcut_is_measured_through_lens_slant_shadow_and_thickness() {
        for (double thickness : new double[] {3, 9}) {
            FoundBoards found = BoardFinder.find(RenderedPhoto.photo(scene(thickness)), thickness, 1);
            assertThat(found.boards()).hasSize(1);
            FoundBoard board = found.boards().getFirst();
            OutlineError error = OutlineError.between(BOARD, ring(board), board.uncertaintyMm());
            assertThat(error.p95())
                    .as("95 of 100 points, %s mm thick", thickness)
                    .isLessThan(0.5);
            assertThat(error.largest()).isLessThan(1.5);
            assertThat(error.outside()).isLessThan(0.2);
        }
    }

    /** Sharpened, toned and packed as phones do it, on a sheet whose white border was cut off, on a wooden table. */
    @Test
    void a_trimmed_sheet_on_wood_in_a_photo_as_phones_make_it_is_measured_as_well() {
        for (int seed = 1; seed <= 3; seed++) {
            Scene scene = scene(3);
            scene.trimmed = seed == 1 ? 0 : 3.5;
            scene.table = new double[] {0.35, 0.2, 0.1};
            Photo photo = RenderedPhoto.read(PhoneLook.of(RenderedPhoto.jpeg(scene), seed));
            FoundBoard board = BoardFinder.find(photo, 3, 1).boards().getFirst();
            OutlineError error = OutlineError.between(BOARD, ring(board), board.uncertaintyMm());
            assertThat(error.p95()).as("95 of 100 points, look %s", seed).isLessThan(0.5);
            assertThat(error.largest()).as("what counts as a wrong outline").isLessThan(3);
            assertThat(error.outside()).as("mm outside, look %s", seed).isLessThan(0.2);
        }
    }

    /** Another lens model, another kind of light, a sensor of one colour a pixel, colour stored by quarters: {@link TracedPhoto}. */
    @Test
    @Tag("far")
    void a_photo_made_in_another_way_is_measured_as_well() {
        for (int seed : new int[] {100, 102}) {
            TracedScene scene = TracedScene.next(new Random(seed), MeasuringSheet.A4, 3);
            Photo photo = RenderedPhoto.read(TracedPhoto.jpeg(scene));
            FoundBoard board =
                    BoardFinder.find(photo, scene.thickness, 1).boards().getFirst();
            OutlineError error = OutlineError.between(scene.outlines.getFirst(), ring(board), board.uncertaintyMm());
            assertThat(error.p95()).as("95 of 100 points, seed %s", seed).isLessThan(0.5);
            assertThat(error.largest()).as("what counts as a wrong outline").isLessThan(3);
            assertThat(error.outside()).as("mm outside, seed %s", seed).isLessThan(0.2);
        }
    }

    /** Its top steps down in brightness as its foot steps up: neither may lead the edge to and fro between them. */
    @Test
    @Tag("far")
    void a_burnt_wall_that_faces_the_camera_makes_no_corners() {
        for (int seed = 1; seed < 3; seed++) {
            Scene scene = Scene.ofOneBoard(UPRIGHT, 6);
            scene.frame(-43.5, 43.5, 297, 210, 24, 0.4 + 2 * seed, 0.86);
            Scene.Board board = scene.boards.getFirst();
            board.colour = new double[] {0.62, 0.47, 0.31};
            board.wall = new double[] {0.15, 0.11, 0.07};
            Photo photo = RenderedPhoto.read(PhoneLook.of(RenderedPhoto.jpeg(scene), seed));
            FoundBoard found = BoardFinder.find(photo, 6, 1).boards().getFirst();
            OutlineError error = OutlineError.between(UPRIGHT, ring(found), found.uncertaintyMm());
            assertThat(error.largest()).isLessThan(1);
            assertThat(found.outer()).as("corners, seed %s", seed).hasSize(4);
        }
    }

    /** As bright as the face, so only its hue tells that a wall is seen: its foot was once taken for the top edge, 2 mm outside. */
    @Test
    void a_wall_as_bright_as_the_face_is_told_by_its_colour() {
        Scene scene = Scene.ofOneBoard(UPRIGHT, 5);
        scene.frame(-43.5, 43.5, 297, 210, 24, 0.4, 0.86);
        Scene.Board board = scene.boards.getFirst();
        board.colour = new double[] {0.15, 0.08, 0.045};
        board.wall = new double[] {0.1, 0.1, 0.09};
        board.grain = 0.03;
        FoundBoard found =
                BoardFinder.find(RenderedPhoto.photo(scene), 5, 1).boards().getFirst();
        OutlineError error = OutlineError.between(UPRIGHT, ring(found), found.uncertaintyMm());
        assertThat(error.p95()).isLessThan(0.3);
        assertThat(error.outside()).isLessThan(0.2);
    }

    /** Lamp and window differ in colour, so the shadow is as brown as dark fibreboard: the edge was once led out to its rim. */
    @Test
    void a_brown_shadow_is_no_dark_board() {
        for (double azimuth : new double[] {1, 4}) {
            Scene scene = Scene.ofOneBoard(UPRIGHT, 4);
            scene.frame(-43.5, 43.5, 297, 210, 8, azimuth, 0.86);
            Scene.Board board = scene.boards.getFirst();
            board.colour = new double[] {0.12, 0.075, 0.05};
            board.wall = new double[] {0.06, 0.04, 0.025};
            board.grain = 0.03;
            scene.ambientColour = new double[] {1.15, 1, 0.6};
            scene.lightColour = new double[] {0.9, 1, 1.15};
            scene.ambient = 0.6;
            scene.penumbra = 0.05;
            scene.light = new double[] {900, -500, -900};
            FoundBoard found =
                    BoardFinder.find(RenderedPhoto.photo(scene), 4, 1).boards().getFirst();
            OutlineError error = OutlineError.between(UPRIGHT, ring(found), found.uncertaintyMm());
            assertThat(error.largest()).as("mm, seen from %s", azimuth).isLessThan(0.8);
            assertThat(error.outside()).as("mm outside, seen from %s", azimuth).isLessThan(0.2);
        }
    }

    /** Strongly packed, it lends paper a block away some of the wood's colour: the edge once went there and back, 2 mm outside. */
    @Test
    void a_shadow_as_dark_as_a_burnt_wall_is_no_board() {
        double[] square = {35, 70, 175, 70, 175, 220, 35, 220};
        for (double azimuth : new double[] {0.2, 3.4}) {
            Scene scene = Scene.ofOneBoard(square, 5);
            scene.frame(-43.5, 43.5, 297, 210, 14, azimuth, 0.86);
            Scene.Board board = scene.boards.getFirst();
            board.wall = new double[] {0.012, 0.01, 0.008};
            scene.ambient = 0.12;
            scene.ambientColour = new double[] {1.25, 1, 0.75};
            scene.penumbra = 0.08;
            scene.light = new double[] {900, -700, -900};
            FoundBoard found =
                    BoardFinder.find(RenderedPhoto.photo(scene), 5, 1).boards().getFirst();
            OutlineError error = OutlineError.between(square, ring(found), found.uncertaintyMm());
            assertThat(error.largest()).as("%s", error).isLessThan(1.5);
            assertThat(error.outside()).as("%s", error).isLessThan(0.2);
        }
    }

    @Test
    void pale_wood_in_a_strongly_packed_photo_gets_no_bumps_of_blocks() {
        for (int seed = 0; seed < 2; seed++) {
            double[] turned = new double[UPRIGHT.length];
            for (int i = 0; i < turned.length; i += 2) {
                double x = UPRIGHT[i] - 105;
                double y = UPRIGHT[i + 1] - 145;
                turned[i] = 105 + Math.cos(0.1 * seed) * x - Math.sin(0.1 * seed) * y;
                turned[i + 1] = 145 + Math.sin(0.1 * seed) * x + Math.cos(0.1 * seed) * y;
            }
            Scene scene = Scene.ofOneBoard(turned, 4);
            scene.frame(-43.5, 43.5, 297, 210, 12, 1 + seed, 0.86);
            Scene.Board board = scene.boards.getFirst();
            board.colour = new double[] {0.74, 0.64, 0.47};
            board.wall = new double[] {0.3, 0.2, 0.11};
            scene.jpeg = 0.5f;
            scene.noise = 0.02;
            scene.seed = seed;
            FoundBoard found =
                    BoardFinder.find(RenderedPhoto.photo(scene), 4, 1).boards().getFirst();
            OutlineError error = OutlineError.between(turned, ring(found), found.uncertaintyMm());
            assertThat(error.largest()).as("mm, seed %s", seed).isLessThan(1.2);
            assertThat(error.outside()).as("mm outside, seed %s", seed).isLessThan(0.2);
        }
    }

    @Test
    void a_print_that_came_out_smaller_scales_the_board_with_it() {
        Photo photo = RenderedPhoto.photo(scene(3));
        FoundBoard right = BoardFinder.find(photo, 3, 1).boards().getFirst();
        FoundBoard small = BoardFinder.find(photo, 3, 0.96).boards().getFirst();
        double area = OutlineError.polygon(ring(right)).getArea();
        assertThat(OutlineError.polygon(ring(small)).getArea() / area).isBetween(0.915, 0.928);
    }
}
