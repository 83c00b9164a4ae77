package puzzleworkshop.camera.rings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TracesTest {

    private static final double[] PIECE = {0, 0, 30, 0, 30, 30, 0, 30};

    private static final double[] WALL_BESIDE = {33, 5, 34, 15, 33, 25};
    private static final double[] FRAGMENT_OF_IT = {20, 20, 25, 25};
    private static final double[] PARTLY_ELSEWHERE = {33, 5, 50, 5};

    private static boolean isMore(double[]... traces) {
        return new Traces(List.of(traces), 9)
                .isMoreThan(List.of(new double[] {100, 0, 130, 0, 130, 30, 100, 30}, PIECE));
    }

    @Test
    void what_lies_on_a_piece_or_close_around_it_is_that_piece() {
        assertThat(isMore()).isFalse();
        assertThat(isMore(WALL_BESIDE, FRAGMENT_OF_IT)).isFalse();
        assertThat(new Traces(List.of(WALL_BESIDE), 9).isMoreThan(List.of())).isTrue();
    }

    @Test
    void what_goes_farther_is_of_something_else() {
        assertThat(isMore(WALL_BESIDE, PARTLY_ELSEWHERE)).isTrue();
        assertThat(new Traces(List.of(PARTLY_ELSEWHERE), 9).scaled(0.9).isMoreThan(List.of(PIECE)))
                .isTrue();
        assertThat(new Traces(List.of(WALL_BESIDE), 2).scaled(1.1).isMoreThan(List.of(PIECE)))
                .isTrue();
    }
}
