package puzzleworkshop.placing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.align.ExpectedMark;
import puzzleworkshop.geometry.align.NormalTolerance;
import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.machines.BedCorner;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.MachineAxes;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.Seeds;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LearnedPlaceTest {

    private static final Length STICKING = Length.mm(1.5);
    private static final double SHIFT = 0.4;
    private static final double TURN = Math.toRadians(0.15);

    /** NIST/SEMATECH e-Handbook of Statistical Methods, 7.2.6.3: n = 43, 90 % covered, 99 % confidence: k = 2.2 (from memory). */
    @Test
    void the_factor_is_the_handbooks_and_that_of_commons_math() {
        assertThat(NormalTolerance.factor(42, 43, 1.644854, 2.326348)).isEqualTo(2.217, within(0.003));
        for (int n = 20; n < 300; n += 17) {
            double chi = new ChiSquaredDistribution(n - 1).inverseCumulativeProbability(0.05);
            double z = new NormalDistribution().inverseCumulativeProbability(0.9995);
            assertThat(NormalTolerance.factor(n - 1, n, NormalTolerance.COVERS_999, NormalTolerance.CONFIDENT_95))
                    .isEqualTo(z * Math.sqrt((n - 1) * (1 + 1.0 / n) / chi), within(0.01));
        }
    }

    /**
     * Of 2,000 simulated fences of 20 boards each, how many tolerances of the turn hold 99.9 % of all further boards, as the
     * normal distribution says: the claim is 95 %. The shift takes the worse axis, so it holds in more.
     */
    @Test
    void what_is_claimed_holds_as_often_as_it_claims() {
        Random random = new Random(Seeds.from(343));
        int turns = 0;
        int shifts = 0;
        for (int fence = 0; fence < 2000; fence++) {
            LearnedPlace learned =
                    LearnedPlace.of(boards(20, random, 0), List.of(), LearnedOverhangTest.MARGIN, STICKING, 0.5);
            UsualSpot spot = learned.spot().orElseThrow();
            turns += covered(Math.toRadians(learned.turnDegrees()), spot.turn() - 0.01, TURN) ? 1 : 0;
            shifts += covered(
                            learned.shift().mm(),
                            spot.corner().xMm()
                                    - UsualSpot.corner(board(1, 0, 0, 0), spot.turn())
                                            .xMm(),
                            SHIFT)
                    ? 1
                    : 0;
        }
        assertThat(turns / 2000.0).isBetween(0.93, 0.975);
        assertThat(shifts / 2000.0).isGreaterThan(0.95);
    }

    @Test
    void boards_measured_before_the_fence_was_put_there_teach_the_scatter_and_not_the_place() {
        Random random = new Random(Seeds.from(344));
        List<Position> boards = new ArrayList<>(boards(25, random, 0));
        List<Instant> laid = List.of(Instant.EPOCH.plusSeconds(60 * 100));
        LearnedPlace none = LearnedPlace.of(boards, laid, LearnedOverhangTest.MARGIN, STICKING, 0.5);
        assertThat(none.since()).isZero();
        assertThat(none.spot()).isEmpty();
        Position next = board(200, 7, -5, 0.01);
        boards.add(next);
        LearnedPlace one = LearnedPlace.of(boards, laid, LearnedOverhangTest.MARGIN, STICKING, 0.5);
        assertThat(one.learnedFrom()).isEqualTo(26);
        assertThat(one.spot().orElseThrow().corner().distanceTo(UsualSpot.corner(next, 0.01)))
                .isLessThan(1e-9);
        LearnedPlace all = LearnedPlace.of(boards.subList(0, 25), List.of(), LearnedOverhangTest.MARGIN, STICKING, 0.5);
        assertThat(one.shift().mm())
                .as("one board says less surely where the fence lies: √2 instead of √(1 + 1/25)")
                .isEqualTo(all.shift().mm() * Math.sqrt(2 / (1 + 1.0 / 25)), within(1e-9));
    }

    @Test
    void boards_with_another_margin_beyond_the_sticker_teach_the_scatter_and_not_the_place() {
        List<Position> boards = boards(25, new Random(Seeds.from(346)), 0);
        LearnedPlace other = LearnedPlace.of(boards, List.of(), Length.mm(12), STICKING, 0.5);
        assertThat(other.since()).isZero();
        assertThat(other.spot()).isEmpty();
        assertThat(other.learnedFrom()).isEqualTo(25);
    }

    @Test
    void below_twenty_boards_what_sticking_may_be_off_counts_wider_by_what_the_place_is_unsure() {
        Random random = new Random(Seeds.from(345));
        LearnedPlace few = LearnedPlace.of(boards(4, random, 0), List.of(), LearnedOverhangTest.MARGIN, STICKING, 0.5);
        assertThat(few.learnedFrom()).isZero();
        assertThat(few.shift().mm()).isEqualTo(STICKING.mm() * Math.sqrt(1.25), within(1e-9));
    }

    /** A print of another size in the same fence: its front left corner comes to the same place. */
    @Test
    void a_print_of_another_size_lies_with_its_corner_where_the_others_lay() {
        UsualSpot spot = UsualSpot.of(List.of(board(1, 0, 0, 0)));
        Point corner = spot.corner();
        assertThat(corner.distanceTo(new Point(40 - 3, 90 + 203))).isLessThan(1e-9);
        var edges = DrawnPrint.edges(Size.mm(120, 90), Length.mm(2), 0);
        Similarity place = spot.bring(edges);
        assertThat(place.of(new Point(-2, 92)).distanceTo(corner)).isLessThan(1e-9);
    }

    /**
     * Boards laid by hand within a few millimetres, marks read 0.3 mm off: the next board's marks are looked for before any is
     * visited, after one, and after two. What is stated holds 99.9 % of further boards and is taken the worst way.
     */
    @Test
    void marks_lie_where_they_are_looked_for_however_the_machine_counts() {
        Random random = new Random(Seeds.from(347));
        DrawnPrint print = MeasuringTest.print(Size.mm(300, 200));
        int[] missed = new int[3];
        int rounds = 2000;
        for (int round = 0; round < rounds; round++) {
            MachineAxes axes = new MachineAxes(
                    BedCorner.values()[round % 4],
                    random.nextBoolean(),
                    random.nextBoolean(),
                    MachineAxes.Unit.values()[round % 2]);
            Machine machine = MeasuringTest.machine(axes);
            LearnedPlace hand =
                    LearnedPlace.of(boards(25, random, 0), List.of(), LearnedOverhangTest.MARGIN, STICKING, 0.5);
            Position next = boards(1, random, 0).getFirst();
            List<MarkVisit> all = MeasuringTest.visits(print, 0, next.place(), axes, 4).stream()
                    .map(visit -> new MarkVisit(
                            visit.mark(),
                            visit.drawn(),
                            visit.shownX() + 0.3 / axes.unit().inMm() * random.nextGaussian(),
                            visit.shownY() + 0.3 / axes.unit().inMm() * random.nextGaussian()))
                    .toList();
            for (int visited = 0; visited < 3; visited++) {
                Map<Integer, ExpectedMark> expected =
                        hand.expected(print, 0, all.subList(0, visited), machine, PlacingRules.USUAL);
                assertThat(expected).hasSize(4 - visited);
                ExpectedMark fourth = expected.get(4);
                Point truly = next.place().of(print.marks().get(3));
                missed[visited] +=
                        fourth.at().distanceTo(truly) > fourth.within().orElseThrow() ? 1 : 0;
                assertThat(axes.onBed(
                                        axes.shownX(fourth.at(), machine.bed()),
                                        axes.shownY(fourth.at(), machine.bed()),
                                        machine.bed())
                                .distanceTo(fourth.at()))
                        .isLessThan(1e-9);
            }
        }
        assertThat(Arrays.stream(missed).max().orElseThrow()).isLessThanOrEqualTo(rounds / 250);
    }

    @Test
    void one_mark_says_where_the_others_are_if_the_board_lies_straight_before_anything_is_learned() {
        LearnedPlace none = LearnedPlace.of(List.of(), List.of(), LearnedOverhangTest.MARGIN, STICKING, 0.5);
        DrawnPrint print = MeasuringTest.print(Size.mm(300, 200));
        Machine machine = MeasuringTest.machine(MachineAxes.USUAL);
        Similarity straight = Similarity.about(new Point(0, 0), 1, 0, 40, 90);
        List<MarkVisit> first = MeasuringTest.visits(print, 0, straight, MachineAxes.USUAL, 1);
        assertThat(none.expected(print, 0, List.of(), machine, PlacingRules.USUAL))
                .isEmpty();
        ExpectedMark third =
                none.expected(print, 0, first, machine, PlacingRules.USUAL).get(3);
        assertThat(third.at().distanceTo(straight.of(print.marks().get(2)))).isLessThan(1e-9);
        assertThat(third.within()).isEmpty();
        assertThat(none.mayTurn(0.3)).isTrue();
        assertThat(none.farthestTurned()).isEmpty();
    }

    /** 0.01 radians on average, 0.15° of scatter: 99.9 % with 95 % confidence lie within 0.15·4.5 = 0.68° of that. */
    @Test
    void a_print_turned_further_than_prints_usually_lie_is_noticed_by_two_marks() {
        LearnedPlace hand = LearnedPlace.of(
                boards(25, new Random(Seeds.from(348)), 0), List.of(), LearnedOverhangTest.MARGIN, STICKING, 0.5);
        assertThat(hand.mayTurn(0.01)).isTrue();
        assertThat(hand.mayTurn(0.01 + Math.toRadians(2))).isFalse();
        assertThat(hand.farthestTurned().orElseThrow())
                .isBetween(Math.toDegrees(0.01) + 0.4, Math.toDegrees(0.01) + 1.1);
    }

    private static boolean covered(double tolerance, double off, double deviation) {
        NormalDistribution errors = new NormalDistribution(0, deviation);
        return errors.cumulativeProbability(off + tolerance) - errors.cumulativeProbability(off - tolerance) >= 0.999;
    }

    private static List<Position> boards(int count, Random random, int from) {
        List<Position> boards = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            boards.add(board(
                    from + i,
                    SHIFT * random.nextGaussian(),
                    SHIFT * random.nextGaussian(),
                    0.01 + TURN * random.nextGaussian()));
        }
        return boards;
    }

    /** A print of 306 × 206 mm whose corner comes to 37, 293 when nothing is off, off by a shift of its middle and a turn about it. */
    private static Position board(int id, double dx, double dy, double turn) {
        Point middle = new Point(150, 100);
        return LearnedOverhangTest.position(id, id, Similarity.about(middle, 1, turn, 40 + dx, 90 + dy), true, 1);
    }
}
