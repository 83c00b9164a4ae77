package puzzleworkshop.placing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.geometry.align.SimilarityFit;
import puzzleworkshop.measure.Length;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LearnedReadingTest {

    /** Readings made with a known error, which must come back; 1,000 boards fix it to a fortieth. */
    @Test
    void the_error_that_readings_were_made_with_is_found_from_three_and_four_marks() {
        Random random = new Random(Seeds.from(149));
        List<Position> boards = new ArrayList<>();
        for (int i = 0; i < 1000; i++) {
            boards.add(board(i, 3 + i % 2, 0.22, random));
        }
        LearnedReading learned = LearnedReading.of(boards).orElseThrow();
        assertThat(learned.boards()).isEqualTo(1000);
        assertThat(learned.deviationMm()).isEqualTo(0.22, within(0.22 / 25));
    }

    @Test
    void two_marks_say_nothing_and_a_few_boards_too_little() {
        Random random = new Random(Seeds.from(150));
        List<Position> boards = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            boards.add(board(i, 2, 0.3, random));
        }
        assertThat(LearnedReading.of(boards)).isEmpty();
        for (int i = 0; i < 4; i++) {
            boards.add(board(50 + i, 4, 0.3, random));
        }
        assertThat(LearnedReading.of(boards)).as("16 numbers left over").isEmpty();
        boards.add(board(60, 4, 0.3, random));
        assertThat(LearnedReading.of(boards)).isPresent();
    }

    private static Position board(int id, int marks, double error, Random random) {
        List<Point> drawn = MeasuringTest.print().marks().subList(0, marks);
        Similarity place = Similarity.about(new Point(0, 0), 1.001, 0.01, 40, 90);
        List<Point> seen = drawn.stream()
                .map(place::of)
                .map(p -> p.plus(error * random.nextGaussian(), error * random.nextGaussian()))
                .toList();
        SimilarityFit fit = SimilarityFit.of(drawn, seen);
        List<Position.Visited> visits = new ArrayList<>();
        for (int i = 0; i < marks; i++) {
            visits.add(new Position.Visited(
                    new MarkVisit(
                            i + 1, drawn.get(i), seen.get(i).xMm(), seen.get(i).yMm()),
                    Length.mm(fit.residuals().get(i))));
        }
        Position bare = LearnedOverhangTest.position(id, id, fit.place(), false, 1);
        return new Position(
                bare.id(),
                bare.jobId(),
                bare.machineId(),
                bare.copy(),
                bare.source(),
                bare.inJig(),
                bare.turns(),
                bare.axes(),
                bare.bed(),
                bare.finished(),
                bare.overhang(),
                bare.holdDown(),
                bare.kerf(),
                visits,
                bare.place(),
                bare.followed(),
                bare.spare(),
                bare.uncertainty(),
                bare.moved(),
                bare.by(),
                bare.at());
    }
}
