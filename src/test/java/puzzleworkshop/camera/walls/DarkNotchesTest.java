package puzzleworkshop.camera.walls;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.stream.DoubleStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.camera.OutlineError;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.camera.Scene;
import puzzleworkshop.camera.outline.BoardFinder;
import puzzleworkshop.camera.outline.FoundBoard;
import puzzleworkshop.measure.Refused;

/** A thick board cut by a laser, seen from the side along its narrow notch: no paper is seen in it. Known truth by {@link RenderedPhoto}. */
@Tag("slow")
@DisplayNameGeneration(ReplaceUnderscores.class)
class DarkNotchesTest {

    private static double[] notched(double deep) {
        return new double[] {45, 70, 99, 70, 101, 70 + deep, 103, 70, 165, 70, 165, 220, 45, 220};
    }

    private static FoundBoard found(double[] outline) {
        Scene scene = Scene.ofOneBoard(outline, 8);
        scene.frame(-43.5, 43.5, 297, 210, 30, 0, 0.9);
        scene.boards.getFirst().wall = new double[] {0.06, 0.04, 0.025};
        return BoardFinder.find(RenderedPhoto.photo(scene), 8, 1).boards().getFirst();
    }

    @Test
    void a_notch_that_the_wall_hides_is_found_by_the_wall_that_is_seen_in_it() {
        double[] outline = notched(12);
        FoundBoard board = found(outline);
        double[] ring = board.outer().stream()
                .flatMapToDouble(s -> DoubleStream.of(s.xMm(), s.yMm()))
                .toArray();
        OutlineError error = OutlineError.between(outline, ring, board.uncertaintyMm());
        assertThat(error.largest()).as("%s", error).isLessThan(3);
        assertThat(error.outside()).as("%s", error).isLessThan(0.2);
    }

    @Test
    void what_is_dark_too_far_in_is_asked_about() {
        Refused refused = catchThrowableOfType(Refused.class, () -> found(notched(28)));
        assertThat(refused.sentence().key()).isEqualTo("camera.outline.notch");
    }
}
