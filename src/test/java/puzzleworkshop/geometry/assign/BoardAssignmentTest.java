package puzzleworkshop.geometry.assign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.locationtech.jts.geom.Geometry;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.RandomOutlines;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.assign.BoardAssignment.Placed;
import puzzleworkshop.geometry.assign.BoardAssignment.Plan;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.Seeds;

/** JTS judges every plan: blanks inside their boards, none over another; never worse than first come, first served. */
@Tag("slow")
@DisplayNameGeneration(ReplaceUnderscores.class)
class BoardAssignmentTest {

    private static final UsefulSizes SIZES = UsefulSizes.common();

    @Test
    void plans_are_possible_and_never_worse_than_first_come_first_served_nor_better_than_the_bound() {
        for (int seed = 0; seed < 4; seed++) {
            Random random = new Random(seed);
            RandomOutlines outlines = new RandomOutlines(seed);
            List<Outline> stock =
                    IntStream.range(0, 12).mapToObj(i -> outlines.next(true)).toList();
            List<Size> blanks = IntStream.range(0, 9)
                    .mapToObj(i -> Size.mm(120 + random.nextInt(200), 90 + random.nextInt(120)))
                    .toList();
            Outline fresh = Outline.rectangle(Size.mm(600, 400));
            BoardAssignment assignment = new BoardAssignment(
                    stock.stream().map(o -> Profile.of(o, SIZES)).toList(),
                    List.of(Profile.of(fresh, SIZES)),
                    blanks,
                    SIZES,
                    Length.ZERO,
                    (blank, board) -> null);
            Plan firstCome = assignment.firstCome();
            Plan together = assignment.together(300, seed);
            assertThat(firstCome.isBetterThan(together)).as("seed %d", seed).isFalse();
            assertThat(together.placed()).hasSize(9);
            assertThat(together.valueLost().mm2())
                    .as("seed %d", seed)
                    .isGreaterThanOrEqualTo(assignment.leastValueLost(together).mm2() - 1);
            assertThat(together.newArea().mm2())
                    .isGreaterThanOrEqualTo(assignment.leastNewArea().mm2() - 1);
            judge(together, stock, fresh, blanks, seed);
        }
    }

    private static void judge(Plan plan, List<Outline> stock, Outline fresh, List<Size> blanks, int seed) {
        for (Placed placed : plan.placed()) {
            Outline board = placed.board() < stock.size() ? stock.get(placed.board()) : fresh;
            Geometry blank = placed.place().polygon(blanks.get(placed.blank()), 2 * Outline.TOLERANCE);
            assertThat(board.free().covers(blank))
                    .as("seed %d: %s", seed, placed)
                    .isTrue();
            for (Placed other : plan.placed()) {
                if (other.blank() != placed.blank() && other.board() == placed.board()) {
                    assertThat(blank.intersects(
                                    other.place().polygon(blanks.get(other.blank()), 2 * Outline.TOLERANCE)))
                            .as("seed %d: %s over %s", seed, placed, other)
                            .isFalse();
                }
            }
        }
    }

    @Test
    void two_blanks_share_a_board_when_that_saves_a_new_one() {
        List<Profile> stock = List.of(Profile.of(Outline.rectangle(Size.mm(400, 200)), SIZES));
        List<Size> blanks = List.of(Size.mm(200, 200), Size.mm(200, 200));
        List<Profile> fresh = List.of(Profile.of(Outline.rectangle(Size.mm(600, 400)), SIZES));
        Plan plan =
                new BoardAssignment(stock, fresh, blanks, SIZES, Length.ZERO, (blank, board) -> null).together(100, 1);
        assertThat(plan.newArea().mm2()).isZero();
        assertThat(plan.placed()).extracting(Placed::board).containsOnly(0);
    }

    /** Four squares of 200 mm on a board of 400 mm lose all of it; two boards of 200 mm lose nothing else. */
    @Test
    void the_bound_is_the_optimum_where_area_alone_decides() {
        List<Profile> stock = Stream.of(Size.mm(400, 400), Size.mm(200, 200), Size.mm(200, 200))
                .map(size -> Profile.of(Outline.rectangle(size), SIZES))
                .toList();
        List<Size> blanks = Collections.nCopies(6, Size.mm(200, 200));
        BoardAssignment assignment =
                new BoardAssignment(stock, List.of(), blanks, SIZES, Length.ZERO, (blank, board) -> null);
        Plan plan = assignment.together(500, 1);
        double all = stock.stream().mapToDouble(board -> board.value().mm2()).sum();
        assertThat(plan.unplaced()).isEmpty();
        assertThat(plan.valueLost().mm2()).isCloseTo(all, within(1.0));
        assertThat(assignment.leastValueLost(plan).mm2()).isBetween(all * 0.98, all + 1);
    }

    /** 800 × 600 mm holds two blanks of 522 × 372 mm and never three (their area alone forbids it), so five need three. */
    @Test
    void new_boards_are_as_few_as_the_bound_says() {
        List<Profile> fresh = List.of(Profile.of(Outline.rectangle(Size.mm(800, 600)), SIZES));
        List<Size> blanks = Collections.nCopies(5, Size.mm(522, 372));
        BoardAssignment assignment =
                new BoardAssignment(List.of(), fresh, blanks, SIZES, Length.ZERO, (blank, board) -> null);
        assertThat(assignment.leastNewArea().mm2()).isCloseTo(3 * 800 * 600, within(1.0));
        assertThat(assignment.together(500, 1).newBoards()).hasSize(3);
    }

    /**
     * By area a board of 600 × 400 mm would give three blanks of 350 × 210 mm; but two side by side leave 180 mm, two above each
     * other need 420 mm: it gives two.
     */
    @Test
    void the_bound_knows_that_blanks_have_a_shape() {
        List<Profile> fresh = List.of(Profile.of(Outline.rectangle(Size.mm(600, 400)), SIZES));
        List<Size> blanks = Collections.nCopies(3, Size.mm(350, 210));
        BoardAssignment assignment =
                new BoardAssignment(List.of(), fresh, blanks, SIZES, Length.ZERO, (blank, board) -> null);
        assertThat(assignment.leastNewArea().mm2()).isCloseTo(2 * 600 * 400, within(1.0));
        Plan plan = assignment.together(500, 1);
        assertThat(plan.newBoards()).hasSize(2);
        assertThat(plan.valueLost().mm2())
                .isLessThanOrEqualTo(assignment.leastValueLost(plan).mm2() * 1.05);
    }

    @Test
    void the_same_question_gets_the_same_answer() {
        RandomOutlines outlines = new RandomOutlines(99);
        Random random = new Random(Seeds.from(99));
        List<Profile> stock = IntStream.range(0, 40)
                .mapToObj(i -> Profile.of(outlines.next(true), SIZES))
                .toList();
        List<Size> blanks = IntStream.range(0, 10)
                .mapToObj(i -> Size.mm(120 + random.nextInt(200), 90 + random.nextInt(120)))
                .toList();
        List<Profile> fresh = List.of(Profile.of(Outline.rectangle(Size.mm(600, 400)), SIZES));
        Plan one = new BoardAssignment(stock, fresh, blanks, SIZES, Length.mm(0.2), (blank, board) -> null)
                .together(120_000, 5);
        Plan two = new BoardAssignment(stock, fresh, blanks, SIZES, Length.mm(0.2), (blank, board) -> null)
                .together(120_000, 5);
        assertThat(two).isEqualTo(one);
    }

    @Test
    void a_board_that_may_not_be_used_is_left_alone() {
        List<Profile> stock = List.of(Profile.of(Outline.rectangle(Size.mm(400, 200)), SIZES));
        Plan plan = new BoardAssignment(
                        stock,
                        List.of(),
                        List.of(Size.mm(200, 200)),
                        SIZES,
                        Length.ZERO,
                        (blank, board) -> new double[0])
                .together(50, 1);
        assertThat(plan.unplaced()).containsExactly(0);
    }
}
