package puzzleworkshop.camera.pieces;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import org.locationtech.jts.operation.distance.DistanceOp;
import puzzleworkshop.camera.MadeUpPicture;
import puzzleworkshop.camera.OutlineError;
import puzzleworkshop.camera.PieceScenes;
import puzzleworkshop.camera.PieceScenes.Laying;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.camera.Scene;
import puzzleworkshop.camera.sheet.MeasuringSheet;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.Piece;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.mesh.PatternMaker;

/**
 * 12 pieces of 30 mm in photos of 2 megapixels, rendered with known truth (the camera model is written down in
 * {@link RenderedPhoto}): one is missing, and whatever lies below the pieces and whichever side is up, it is named or nothing is.
 */
@Tag("slow")
@DisplayNameGeneration(ReplaceUnderscores.class)
class PieceCheckTest {

    private static final int PIXELS = 1700;
    private static final int GONE = 7;
    private static final double[] DARK_CLOTH = {0.02, 0.022, 0.03};

    private static CutPattern pattern(long number) {
        return PatternMaker.make(PatternSpec.of(Size.mm(120, 90), new PieceGrid(4, 3), number));
    }

    private static Scene.Face landscape(double clouds, int seed) {
        return MadeUpPicture.landscape(120, 90, clouds, seed);
    }

    private static Scene scene(CutPattern pattern, Laying laying, Set<Integer> gone, long seed) {
        List<Piece> lying = new ArrayList<>(pattern.pieces());
        lying.removeIf(piece -> gone.contains(piece.number()));
        Scene scene = PieceScenes.lay(lying, pattern, new Random(seed), laying);
        assertThat(lying).as("all of them lie there").isEmpty();
        return scene;
    }

    private static PieceCheck.Result check(CutPattern pattern, Scene scene) {
        return PieceCheck.of(
                PieceScenes.shapes(pattern),
                List.of(RenderedPhoto.photo(scene)),
                pattern.spec().thickness().mm(),
                1);
    }

    private static void isNamed(PieceCheck.Result result) {
        assertThat(result.troubles()).isEmpty();
        assertThat(result.foreign()).isZero();
        assertThat(result.seen()).hasSize(11);
        assertThat(result.missing()).containsExactly(List.of(GONE));
    }

    private static Set<String> keys(PieceCheck.Result result) {
        return result.troubles().stream().map(Sentence::key).collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void picture_down_on_a_dark_cloth_between_the_cards_the_missing_piece_is_named() {
        CutPattern pattern = pattern(1);
        isNamed(check(pattern, scene(pattern, Laying.betweenTwoCards(PIXELS, DARK_CLOTH, null), Set.of(GONE), 5)));
    }

    @Test
    void picture_up_on_the_sheet_the_missing_piece_is_named_under_a_pale_blue_sky() {
        CutPattern pattern = pattern(2);
        isNamed(check(
                pattern, scene(pattern, Laying.onSheet(MeasuringSheet.A4, PIXELS, landscape(0, 3)), Set.of(GONE), 6)));
    }

    @Test
    void picture_up_on_a_dark_cloth_the_missing_piece_is_named() {
        CutPattern pattern = pattern(3);
        isNamed(check(
                pattern,
                scene(pattern, Laying.betweenTwoCards(PIXELS, DARK_CLOTH, landscape(0.6, 4)), Set.of(GONE), 7)));
    }

    /** Clouds are as white as the paper, so the edge of some pieces is not there to be seen. */
    @Test
    @Tag("far")
    void where_clouds_are_as_white_as_the_paper_nothing_is_called_missing_that_may_lie_there() {
        CutPattern pattern = pattern(4);
        for (int seed = 8; seed < 9; seed++) {
            Scene scene =
                    scene(pattern, Laying.onSheet(MeasuringSheet.A4, PIXELS, landscape(1, seed)), Set.of(GONE), seed);
            PieceCheck.Result result;
            try {
                result = check(pattern, scene);
            } catch (Refused refused) {
                assertThat(refused.sentence().key()).isEqualTo("camera.pieces.noedge");
                continue;
            }
            if (result.troubles().isEmpty()) {
                isNamed(result);
            } else {
                assertThat(result.missing()).isEmpty();
                assertThat(keys(result))
                        .isSubsetOf("camera.pieces.lost", "camera.pieces.hidden", "camera.pieces.touch");
            }
        }
    }

    /** Nothing tells its edge from the paper but its walls and its shadow. */
    @Test
    void a_piece_as_white_as_the_paper_among_blue_ones_is_not_called_missing() {
        CutPattern pattern = pattern(2);
        Scene scene = scene(pattern, Laying.onSheet(MeasuringSheet.A4, PIXELS, landscape(0, 3)), Set.of(), 6);
        scene.boards.get(5).face = (x, y) -> new double[] {scene.paper, scene.paper, scene.paper};
        PieceCheck.Result result = check(pattern, scene);
        assertThat(keys(result)).isNotEmpty().isSubsetOf("camera.pieces.hidden", "camera.pieces.lost");
        assertThat(result.missing()).isEmpty();
    }

    @Test
    @Tag("far")
    void two_small_pieces_that_touch_are_asked_to_be_parted_and_are_neither_foreign_nor_missing() {
        CutPattern pattern = pattern(1);
        for (long number = 2; !areSmallTogether(pattern); number++) {
            pattern = pattern(number);
        }
        Scene scene = scene(pattern, Laying.onSheet(MeasuringSheet.A4, PIXELS, null), Set.of(), 11);
        List<Scene.Board> small = scene.boards.stream()
                .sorted(Comparator.comparingDouble(PieceCheckTest::area))
                .limit(2)
                .toList();
        bring(scene, small.get(0), small.get(1));

        PieceCheck.Result result = check(pattern, scene);
        assertThat(keys(result)).containsExactly("camera.pieces.touch");
        assertThat(result.missing()).isEmpty();
    }

    @Test
    void a_piece_of_another_puzzle_beside_one_that_is_missing_is_not_taken_for_two_that_touch() {
        CutPattern pattern = pattern(1);
        List<Piece> lying = new ArrayList<>(pattern.pieces());
        lying.removeIf(piece -> piece.number() == GONE);
        lying.add(pattern(77).pieces().get(8));
        Scene scene = PieceScenes.lay(lying, pattern, new Random(12), Laying.onSheet(MeasuringSheet.A4, PIXELS, null));
        assertThat(lying).isEmpty();
        PieceCheck.Result result = check(pattern, scene);
        assertThat(result.troubles()).isEmpty();
        assertThat(result.foreign()).isOne();
        assertThat(result.missing()).containsExactly(List.of(GONE));
    }

    /** Whether the two smallest pieces are together no larger than one piece may be, so that size alone does not give them away. */
    private static boolean areSmallTogether(CutPattern pattern) {
        double[] areas = PieceScenes.shapes(pattern).stream()
                .mapToDouble(shape -> OutlineError.polygon(shape.ring()).getArea())
                .sorted()
                .toArray();
        return areas[0] + areas[1] < 1.25 * areas[areas.length - 1];
    }

    private static double area(Scene.Board board) {
        return OutlineError.polygon(board.rings.getFirst()).getArea();
    }

    /** Moves a board to another until they touch, everything else aside. */
    private static void bring(Scene scene, Scene.Board board, Scene.Board to) {
        Geometry still = OutlineError.polygon(to.rings.getFirst());
        double[] ring = board.rings.getFirst().clone();
        for (int i = 0; i < 5; i++) {
            var near = DistanceOp.nearestPoints(OutlineError.polygon(ring), still);
            double apart = near[0].distance(near[1]);
            double share = apart < 0.02 ? 0 : (apart - 0.01) / apart;
            for (int k = 0; k < ring.length; k += 2) {
                ring[k] += share * (near[1].x - near[0].x);
                ring[k + 1] += share * (near[1].y - near[0].y);
            }
        }
        Scene.Board moved = new Scene.Board(List.of(ring), board.thickness);
        moved.wall = board.wall;
        scene.boards.remove(board);
        Geometry there = OutlineError.polygon(ring);
        scene.boards.removeIf(other ->
                other != to && OutlineError.polygon(other.rings.getFirst()).isWithinDistance(there, 1.5));
        scene.boards.add(moved);
    }
}
