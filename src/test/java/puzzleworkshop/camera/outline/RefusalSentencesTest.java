package puzzleworkshop.camera.outline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.camera.Scene;
import puzzleworkshop.measure.Refused;

/** One rendered photo for each thing that goes wrong when a photo is taken, and the sentence that says what to do about it. */
@Tag("slow")
@DisplayNameGeneration(ReplaceUnderscores.class)
class RefusalSentencesTest {

    private static final double[] BOARD = {40, 60, 165, 66, 170, 150, 120, 152, 118, 230, 45, 226};

    private static Scene scene(double... outline) {
        return Scene.ofOneBoard(outline.length == 0 ? BOARD : outline, 3);
    }

    private static Scene with(java.util.function.Consumer<Scene> change) {
        Scene scene = scene();
        change.accept(scene);
        return scene;
    }

    static Stream<Arguments> photos() {
        return Stream.of(
                Arguments.of(
                        "a board that leaves few markers free",
                        scene(70, -20, 240, -20, 240, 320, -20, 320, -20, 40, 70, 40),
                        "camera.sheet.few"),
                Arguments.of(
                        "markers along one side only",
                        scene(-20, 30, 240, 30, 240, 320, -20, 320),
                        "camera.sheet.oneside"),
                Arguments.of(
                        "the lamp mirrored at the edge of the board",
                        with(s -> {
                            s.exposure = 0.75;
                            s.mirrored.add(new Scene.Mirrored(160, 110, 22));
                        }),
                        "camera.photo.glare"),
                Arguments.of(
                        "wood burnt out to white along the edge",
                        with(s -> s.boards.getFirst().face = (x, y) -> {
                            double white = Math.exp(-Math.pow((y - 190) / 7, 2)) * Math.clamp((x - 60) / 30, 0, 1);
                            return new double[] {0.80 + 0.06 * white, 0.74 + 0.12 * white, 0.62 + 0.24 * white};
                        }),
                        "camera.outline.white"),
                Arguments.of(
                        "from far to the side",
                        with(s -> s.frame(-43.5, 43.5, 297, 210, 57, 0.7, 0.85)),
                        "camera.sheet.slanted"),
                Arguments.of("paper in waves", with(s -> s.crumpled = 2), "camera.sheet.notflat"),
                Arguments.of(
                        "from too far away",
                        with(s -> s.frame(-43.5, 43.5, 297, 210, 10, 0.7, 0.31)),
                        "camera.sheet.small"),
                Arguments.of("out of focus", with(s -> s.blur = 3.6), "camera.photo.blurred"),
                Arguments.of(
                        "a board as grey as its shadow",
                        with(s -> {
                            s.boards.getFirst().colour = new double[] {0.5, 0.5, 0.5};
                            s.boards.getFirst().wall = new double[] {0.3, 0.3, 0.3};
                            s.boards.getFirst().grain = 0.01;
                        }),
                        "camera.outline.grey"),
                Arguments.of(
                        "a board over the edge of the photo",
                        scene(60, 60, 150, 60, 150, 335, 60, 335),
                        "camera.outline.overphoto"),
                Arguments.of("a board far over the sheet", farOver(), "camera.outline.oversheet"),
                Arguments.of("a single card", oneCard(), "camera.cards.few"),
                Arguments.of("a board far beyond the cards", beyondCards(), "camera.cards.beyond"));
    }

    private static Scene farOver() {
        Scene scene = scene(60, 60, 150, 60, 150, 365, 60, 365);
        scene.frame(-43.5, 43.5, 297, 210, 10, 0.7, 0.6);
        return scene;
    }

    private static Scene oneCard() {
        Scene scene = scene(110, 10, 240, 12, 238, 120, 112, 118);
        scene.cards.add(new Scene.LaidCard(0, 0, 0, 0.03));
        scene.frame(0, 0, 250, 130, 10, 0.7, 0.85);
        scene.roll = 0;
        return scene;
    }

    private static Scene beyondCards() {
        Scene scene = scene(105, -70, 235, -75, 238, 260, 108, 255);
        scene.cards.add(new Scene.LaidCard(0, 0, 0, 0.03));
        scene.cards.add(new Scene.LaidCard(1, 250, 10, -0.03));
        scene.frame(-10, -85, 360, 355, 10, 0.7, 0.9);
        scene.roll = 0;
        return scene;
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("photos")
    void what_goes_wrong_is_said(String what, Scene scene, String key) {
        Refused no = catchThrowableOfType(Refused.class, () -> BoardFinder.find(RenderedPhoto.photo(scene), 3, 1));
        assertThat(no).as(what + " is refused").isNotNull();
        assertThat(no.sentence().key()).isEqualTo(key);
    }

    /** The strip of its wall, 125 mm long and 4 mm wide, was once taken for the board: an outline wrong by its whole width. */
    @Test
    void a_board_as_white_as_the_paper_is_not_taken_for_its_wall() {
        Scene scene = Scene.ofOneBoard(BOARD, 6);
        scene.boards.getFirst().colour = new double[] {0.85, 0.85, 0.84};
        scene.boards.getFirst().wall = new double[] {0.3, 0.19, 0.1};
        scene.boards.getFirst().grain = 0.005;
        scene.frame(-43.5, 43.5, 297, 210, 34, Math.PI, 0.8);
        assertThat(catchThrowableOfType(Refused.class, () -> BoardFinder.find(RenderedPhoto.photo(scene), 6, 1))
                        .sentence()
                        .key())
                .isEqualTo("camera.outline.pale");
    }

    @Test
    void an_empty_sheet_and_a_photo_without_one_are_said() {
        Photo empty = RenderedPhoto.photo(with(scene -> scene.boards.clear()));
        assertThat(catchThrowableOfType(Refused.class, () -> BoardFinder.find(empty, 3, 1))
                        .sentence()
                        .key())
                .isEqualTo("camera.outline.none");
        Photo black = new Photo(400, 300, new int[120_000]);
        assertThat(catchThrowableOfType(Refused.class, () -> BoardFinder.find(black, 3, 1))
                        .sentence()
                        .key())
                .isEqualTo("camera.sheet.none");
    }
}
