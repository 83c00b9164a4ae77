package puzzleworkshop.placing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.NeededOverhang;
import puzzleworkshop.geometry.align.ProposedOverhang;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.machines.MachineAxes;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LearnedOverhangTest {

    private static final Length KERF = Length.mm(0.15);
    private static final Length EXACT = Length.mm(0.05);
    private static final Length STICK = Length.mm(1.5);
    static final Length MARGIN = Length.mm(10);

    @Test
    void below_twenty_cuts_nothing_is_proposed() {
        assertThat(LearnedOverhang.of(places(19, false), List.of(), KERF, EXACT, STICK)
                        .withMarks())
                .isEmpty();
        assertThat(LearnedOverhang.of(places(20, false), List.of(), KERF, EXACT, STICK)
                        .withMarks())
                .isPresent();
    }

    /** Wilks 1941: the largest of 20 covers 0.05^(1/20) = 86.1 % of all further ones with 95 % confidence. */
    @Test
    void the_largest_need_is_proposed_with_the_share_that_it_covers() {
        List<Position> measured = places(20, false);
        var needed = LearnedOverhang.of(measured, List.of(), KERF, EXACT, STICK)
                .withMarks()
                .orElseThrow();
        double largest = measured.stream()
                .mapToDouble(p -> p.overhang().mm() - p.spare().mm())
                .max()
                .orElseThrow();
        assertThat(needed.largest()).isEqualTo(largest, within(1e-9));
        assertThat(needed.covered()).isEqualTo(0.861, within(0.001));
    }

    @Test
    void a_board_that_was_measured_twice_counts_once_by_its_last_place() {
        List<Position> measured = new ArrayList<>(places(20, false));
        Position newest = measured.getFirst();
        measured.addFirst(position(99, newest.jobId(), Similarity.NONE, false, 2.9));
        assertThat(LearnedOverhang.of(measured, List.of(), KERF, EXACT, STICK).cuts())
                .isEqualTo(20);
    }

    /** The deviation of the turns against Commons Math. */
    @Test
    void the_usual_turn_is_the_standard_deviation_of_all() {
        List<Position> measured = places(30, false);
        double judge = new StandardDeviation()
                .evaluate(measured.stream()
                        .mapToDouble(p -> Math.toDegrees(p.place().turn()))
                        .toArray());
        assertThat(LearnedOverhang.of(measured, List.of(), KERF, EXACT, STICK).turned())
                .isEqualTo(judge, within(1e-9));
    }

    /** Every other board lies 1 mm to the right: the second, cut where the first lay, is off by that 1 mm, later ones by less. */
    @Test
    void in_the_jig_without_marks_a_board_needs_what_it_lies_off_those_before_it() {
        List<Position> measured = new ArrayList<>();
        for (int i = 20; i >= 0; i--) {
            measured.add(position(i, i, Similarity.about(new Point(0, 0), 1, 0, 40 + i % 2, 90), true, 1));
        }
        LearnedOverhang learned = LearnedOverhang.of(measured, List.of(), KERF, EXACT, STICK);
        assertThat(learned.inJig()).isEqualTo(21);
        assertThat(learned.byJig().orElseThrow().cuts()).isEqualTo(20);
        assertThat(learned.byJig().orElseThrow().largest()).isEqualTo(1 + 0.075 + 0.05, within(1e-9));
    }

    /** 300 × 200 at 3 mm is 306 × 206 = 63,036 mm²; at 2 mm 304 × 204 = 62,016 mm²: 1.618 % less. */
    @Test
    void the_paper_saved_is_the_difference_of_the_stickers() {
        var needed = new NeededOverhang(20, 1.93, 0.861);
        ProposedOverhang proposed = ProposedOverhang.of(needed, Length.ZERO, Length.mm(3), sizes(20));
        assertThat(proposed.overhang().mm()).isEqualTo(2, within(1e-9));
        assertThat(proposed.saved()).isEqualTo(0.01618, within(0.00001));
        assertThat(ProposedOverhang.of(needed, Length.mm(2.8), Length.mm(3), sizes(20))
                        .forCrosses())
                .isTrue();
    }

    /**
     * 300 × 200 mm turned by 0.5° about its middle: a corner, 150 and 100 mm away, moves by 150·(1 − cos) + 100·sin 0.5° =
     * 0.879 mm across and by 150·sin − 100·(1 − cos) = 1.305 mm down (school trigonometry).
     */
    @Test
    void by_eye_a_board_needs_what_its_turn_takes_and_what_the_eye_leaves_wherever_it_lay() {
        List<Position> measured = new ArrayList<>();
        for (int i = 20; i >= 1; i--) {
            double turn = Math.toRadians(i % 2 == 0 ? 0.5 : -0.3);
            measured.add(position(i, i, Similarity.about(new Point(150, 100), 1, turn, 7 * i, 40), false, 1));
        }
        LearnedOverhang learned = LearnedOverhang.of(measured, List.of(), KERF, EXACT, STICK);
        assertThat(learned.byEye().orElseThrow().cuts()).isEqualTo(20);
        assertThat(learned.byEye().orElseThrow().largest()).isEqualTo(1.305 + 1.5 + 0.075 + 0.05, within(0.01));
        assertThat(learned.byJig()).isEmpty();
    }

    private static List<Size> sizes(int count) {
        return places(count, false).stream().map(Position::finished).toList();
    }

    private static List<Position> places(int count, boolean jig) {
        Random random = new Random(Seeds.from(142));
        List<Position> places = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Similarity place = Similarity.about(
                    new Point(0, 0),
                    1,
                    random.nextGaussian() * 0.005,
                    40 + random.nextGaussian(),
                    90 + random.nextGaussian());
            places.add(position(count - i, count - i, place, jig, 0.5 + random.nextDouble()));
        }
        return places;
    }

    static Position position(long id, long job, Similarity place, boolean jig, double spare) {
        return new Position(
                id,
                job,
                1,
                1,
                Position.Source.MARKS,
                jig,
                0,
                MachineAxes.USUAL,
                Size.mm(400, 400),
                Size.mm(300, 200),
                Length.mm(3),
                MARGIN,
                KERF,
                List.of(),
                place,
                false,
                Length.mm(spare),
                Length.mm(0.8),
                Optional.empty(),
                "Robin",
                Instant.EPOCH.plusSeconds(60 * id));
    }
}
