package puzzleworkshop.camera.sheet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.camera.RenderedPhoto;
import puzzleworkshop.camera.Scene;
import puzzleworkshop.measure.Refused;

/** A marker that a board half covers can be read as another one, which lies at the other end of the sheet. */
@Tag("slow")
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@DisplayNameGeneration(ReplaceUnderscores.class)
class MisreadMarkerTest {

    private static final double[] OFFCUT = {40, 60, 165, 66, 120, 230, 45, 226};

    private Photo photo;
    private List<SeenMarker> markers;
    private double[] eye;

    @BeforeAll
    void look() {
        photo = RenderedPhoto.photo(Scene.ofOneBoard(OFFCUT, 3));
        markers = MarkerFinder.find(photo);
        eye = MeasuringSheetFinder.find(photo, markers).view().eye();
    }

    @Test
    void one_marker_read_as_another_is_left_out_and_the_sheet_is_seen_from_where_it_was() {
        List<SeenMarker> misread = exchanged(1);
        double[] now = MeasuringSheetFinder.find(photo, misread).view().eye();
        assertThat(Math.hypot(Math.hypot(now[0] - eye[0], now[1] - eye[1]), now[2] - eye[2]))
                .as("mm, of an eye some 400 away")
                .isLessThan(1);
    }

    @Test
    void where_many_lie_elsewhere_the_sheet_is_refused_as_before() {
        assertThatThrownBy(() -> MeasuringSheetFinder.find(photo, exchanged(markers.size() / 2)))
                .isInstanceOf(Refused.class);
    }

    /** So many of the markers have the code of the one half the list further on. */
    private List<SeenMarker> exchanged(int count) {
        List<SeenMarker> all = new ArrayList<>(markers);
        for (int i = 0; i < count; i++) {
            SeenMarker other = markers.get((i + markers.size() / 2) % markers.size());
            all.set(i, new SeenMarker(other.code(), markers.get(i).corners()));
        }
        return all;
    }
}
