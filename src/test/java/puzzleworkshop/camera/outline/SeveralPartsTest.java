package puzzleworkshop.camera.outline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import puzzleworkshop.camera.OutlineError;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.camera.Scene;
import puzzleworkshop.measure.Refused;

/** Loose cards around a board that no sheet can hold, and several boards in one photo; rendered, with known truth. */
@Tag("slow")
@Tag("far")
@DisplayNameGeneration(ReplaceUnderscores.class)
class SeveralPartsTest {

    /** 520 by 360 mm with a bay: larger than A3. */
    private static final double[] LARGE = {0, 6, 515, 0, 520, 350, 330, 352, 328, 230, 150, 226, 152, 360, 4, 356};

    private static Scene between(int cards, double[] table) {
        Scene scene = Scene.ofOneBoard(LARGE, 4);
        scene.width = 2600;
        scene.height = 1950;
        scene.focal = 2080;
        scene.centreU = 1300;
        scene.centreV = 975;
        scene.roll = 0.05;
        scene.table = table;
        List<Scene.LaidCard> all = List.of(
                new Scene.LaidCard(0, -105, 20, 0.04),
                new Scene.LaidCard(1, 538, 215, -0.06),
                new Scene.LaidCard(2, -108, 215, -0.02),
                new Scene.LaidCard(3, 535, 12, 0.09));
        scene.cards.addAll(all.subList(0, cards));
        scene.frame(-110, -5, 740, 370, 12, 0.9, 0.88);
        return scene;
    }

    private static double[] ring(FoundBoard board) {
        return board.outer().stream()
                .flatMapToDouble(s -> DoubleStream.of(s.xMm(), s.yMm()))
                .toArray();
    }

    private static void isRight(double[] truth, FoundBoard board, double p95) {
        OutlineError error = OutlineError.between(truth, ring(board), board.uncertaintyMm());
        assertThat(error.p95()).as("95 of 100 points").isLessThan(p95);
        assertThat(error.largest()).as("what counts as a wrong outline").isLessThan(3);
        assertThat(error.outside()).as("mm outside").isLessThan(0.2);
    }

    @Test
    void a_board_larger_than_any_sheet_is_measured_between_four_cards() {
        FoundBoards found = BoardFinder.find(RenderedPhoto.photo(between(4, new double[] {0.16, 0.09, 0.05})), 4, 1);
        assertThat(found.leftOut()).isEmpty();
        assertThat(found.boards()).hasSize(1);
        isRight(LARGE, found.boards().getFirst(), 0.8);
    }

    /** Two cards across a corner say little of the light at the other two. */
    @Test
    void two_cards_at_opposite_corners_are_enough_or_more_are_asked_for() {
        isRightOrRefused(between(2, new double[] {0.02, 0.022, 0.03}), "camera.cards.beyond");
    }

    @Test
    void on_a_table_of_the_same_wood_the_board_is_right_or_refused() {
        isRightOrRefused(between(4, new double[] {0.70, 0.53, 0.33}), "camera.outline.noedge", "camera.outline.none");
    }

    private static void isRightOrRefused(Scene scene, String... keys) {
        try {
            FoundBoards found = BoardFinder.find(RenderedPhoto.photo(scene), 4, 1);
            assertThat(found.boards()).hasSize(1);
            isRight(LARGE, found.boards().getFirst(), 0.9);
        } catch (Refused refused) {
            assertThat(refused.sentence().key()).isIn((Object[]) keys);
        }
    }

    @Test
    void two_boards_in_one_photo_are_two_outlines() {
        double[] elbow = {18, 40, 98, 36, 101, 110, 60, 112, 62, 170, 22, 168};
        double[] five = {120, 60, 185, 52, 192, 200, 150, 255, 112, 190};
        Scene scene = Scene.ofOneBoard(elbow, 3);
        scene.boards.add(new Scene.Board(List.of(five), 3));
        FoundBoards found = BoardFinder.find(RenderedPhoto.photo(scene), 3, 1);
        assertThat(found.leftOut()).isEmpty();
        assertThat(found.boards()).as("largest first").hasSize(2);
        isRight(five, found.boards().get(0), 0.5);
        isRight(elbow, found.boards().get(1), 0.5);
    }
}
