package puzzleworkshop.camera.pieces;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.camera.pieces.PieceCheck.LaidPiece;
import puzzleworkshop.camera.pieces.PieceCheck.LaidPieces;
import puzzleworkshop.measure.Sentence;

/** Ten places of 400, 440 … 760 mm²; what lies there is given by its distances and its area. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class PieceCountTest {

    private static final int PLACES = 10;

    private static double area(int place) {
        return 400 + 40 * place;
    }

    private static List<PieceShape> pattern() {
        List<PieceShape> shapes = new ArrayList<>();
        for (int i = 0; i < PLACES; i++) {
            double high = area(i) / 20;
            shapes.add(new PieceShape(i + 1, new double[] {0, 0, 20, 0, 20, high, 0, high}));
        }
        return shapes;
    }

    /** Fits one place as well as a camera can tell, the others not. */
    private static LaidPiece piece(int place, double itsOwn, double others) {
        double[] distances = new double[PLACES];
        Arrays.fill(distances, others);
        distances[place] = itsOwn;
        return new LaidPiece(new double[6], distances, area(place));
    }

    private static LaidPiece stranger(double area) {
        double[] distances = new double[PLACES];
        Arrays.fill(distances, 1.4);
        return new LaidPiece(new double[6], distances, area);
    }

    private static List<LaidPiece> without(Integer... gone) {
        List<LaidPiece> laid = new ArrayList<>();
        for (int i = 0; i < PLACES; i++) {
            if (!List.of(gone).contains(i)) {
                laid.add(piece(i, 0.12, 1.2));
            }
        }
        return laid;
    }

    private static PieceCheck.Result count(List<LaidPiece> laid, boolean pictured, double unseen) {
        return PieceCheck.result(pattern(), List.of(new LaidPieces(laid, pictured, unseen, List.of())));
    }

    private static List<String> keys(PieceCheck.Result result) {
        return result.troubles().stream().map(Sentence::key).toList();
    }

    @Test
    void what_is_as_large_as_two_that_are_not_found_is_two_that_touch() {
        List<LaidPiece> laid = without(0, 3);
        laid.add(stranger((area(0) + area(3)) * 1.03));
        PieceCheck.Result result = count(laid, false, 0);
        assertThat(area(0) + area(3)).as("one piece may be as large").isLessThan(1.3 * area(PLACES - 1));
        assertThat(keys(result)).containsExactly("camera.pieces.touch");
        assertThat(result.missing()).isEmpty();
        assertThat(result.isComplete()).isFalse();
    }

    @Test
    void what_is_as_large_as_no_two_that_are_not_found_is_of_another_puzzle() {
        List<LaidPiece> laid = without(0, 3);
        laid.add(stranger(700));
        PieceCheck.Result result = count(laid, false, 0);
        assertThat(result.troubles()).isEmpty();
        assertThat(result.foreign()).isOne();
        assertThat(result.missing()).containsExactly(List.of(1), List.of(4));
    }

    @Test
    void with_pictures_up_what_fits_nowhere_may_have_lost_its_edge_so_nothing_is_missing_yet() {
        List<LaidPiece> laid = without(4, 5);
        laid.add(stranger(300));
        PieceCheck.Result result = count(laid, true, 0);
        assertThat(keys(result)).containsExactly("camera.pieces.lost");
        assertThat(result.missing()).isEmpty();
        assertThat(result.unfound()).as("what to look for").containsExactly(List.of(5), List.of(6));
    }

    @Test
    void a_picture_that_is_partly_as_pale_as_the_paper_may_hide_the_piece_that_is_not_found() {
        assertThat(keys(count(without(4), true, 60))).containsExactly("camera.pieces.hidden");
        assertThat(count(without(), true, 60).isComplete()).as("all are there").isTrue();
        assertThat(count(without(4), true, 60).unfound()).containsExactly(List.of(5));
        assertThat(count(without(4), true, 20).missing()).containsExactly(List.of(5));
        assertThat(count(without(4), true, 20).unfound())
                .as("missing, no longer only not found")
                .isEmpty();
    }

    /** Three places of 20 mm beside each other, the outer two with pieces whose pictures stand out along the first mm of a cut. */
    private static PieceCheck.Result besides(double alongCuts, double unseen) {
        List<PieceShape> row = new ArrayList<>();
        for (int i = 0; i < 3; i++) {
            double x = 20 * i;
            row.add(new PieceShape(i + 1, new double[] {x, 0, x + 20, 0, x + 20, 20, x, 20}));
        }
        List<LaidPiece> laid = new ArrayList<>();
        for (int i = 0; i < 3; i += 2) {
            double[] distances = {1.2, 1.2, 1.2};
            distances[i] = 0.12;
            double[] shown = new double[2 * (int) (2 * alongCuts)];
            for (int k = 0; k < shown.length; k += 2) {
                shown[k] = i == 0 ? 20 : 40;
                shown[k + 1] = k / 4.0;
            }
            laid.add(new LaidPiece(new double[6], distances, 400, shown));
        }
        return PieceCheck.result(row, List.of(new LaidPieces(laid, true, unseen, List.of())));
    }

    @Test
    void a_picture_goes_on_across_a_cut_so_what_its_neighbours_show_there_the_missing_piece_would_show_as_well() {
        assertThat(besides(18, 60).missing()).containsExactly(List.of(2));
        assertThat(keys(besides(3, 60))).containsExactly("camera.pieces.hidden");
        assertThat(keys(besides(18, Double.POSITIVE_INFINITY))).containsExactly("camera.pieces.hidden");
    }

    @Test
    void a_badly_seen_edge_tells_less_so_both_places_that_it_may_be_of_are_named() {
        List<LaidPiece> laid = without(2, 7);
        double[] distances = new double[PLACES];
        Arrays.fill(distances, 1.2);
        distances[2] = 0.4;
        distances[7] = 0.48;
        laid.add(new LaidPiece(new double[6], distances, area(2)));
        assertThat(count(laid, false, 0).missing()).containsExactly(List.of(3, 8));
        distances[2] = 0.12;
        distances[7] = 0.2;
        assertThat(count(laid, false, 0).missing()).containsExactly(List.of(8));
    }

    @Test
    void a_trouble_of_one_photo_keeps_all_of_them_from_naming() {
        LaidPieces first = new LaidPieces(without(0, 1), false, 0, List.of());
        LaidPieces second =
                new LaidPieces(List.of(piece(0, 0.1, 1.2)), false, 0, List.of(Sentence.of("camera.outline.overphoto")));
        PieceCheck.Result result = PieceCheck.result(pattern(), List.of(first, second));
        assertThat(result.missing()).isEmpty();
        assertThat(result.isComplete()).isFalse();
        assertThat(result.seen()).hasSize(9);
    }
}
