package puzzleworkshop.geometry.align;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LearnedReadingTest {

    private static final List<Point> MARKS =
            List.of(Point.of(-1.5, -1.5), Point.of(201.5, -1.5), Point.of(201.5, 151.5), Point.of(-1.5, 151.5));

    /** Readings made with a known error, which must come back; 1,000 boards fix it to a fortieth. */
    @Test
    void the_error_that_readings_were_made_with_is_found_from_three_and_four_marks() {
        Random random = new Random(Seeds.from(149));
        List<List<Double>> boards = new ArrayList<>();
        for (int i = 0; i < 1000; i++) {
            boards.add(board(3 + i % 2, 0.22, random));
        }
        LearnedReading learned = LearnedReading.of(boards).orElseThrow();
        assertThat(learned.boards()).isEqualTo(1000);
        assertThat(learned.deviationMm()).isEqualTo(0.22, within(0.22 / 25));
    }

    @Test
    void two_marks_say_nothing_and_a_few_boards_too_little() {
        Random random = new Random(Seeds.from(150));
        List<List<Double>> boards = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            boards.add(board(2, 0.3, random));
        }
        assertThat(LearnedReading.of(boards)).isEmpty();
        for (int i = 0; i < 4; i++) {
            boards.add(board(4, 0.3, random));
        }
        assertThat(LearnedReading.of(boards)).as("16 numbers left over").isEmpty();
        boards.add(board(4, 0.3, random));
        assertThat(LearnedReading.of(boards)).isPresent();
    }

    private static List<Double> board(int marks, double error, Random random) {
        List<Point> drawn = MARKS.subList(0, marks);
        Similarity place = Similarity.about(new Point(0, 0), 1.001, 0.01, 40, 90);
        List<Point> seen = drawn.stream()
                .map(place::of)
                .map(p -> p.plus(error * random.nextGaussian(), error * random.nextGaussian()))
                .toList();
        return SimilarityFit.of(drawn, seen).residuals();
    }
}
