package puzzleworkshop.wood.ahead;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Wanted;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LearnedWorthTest {

    private static final Wanted SMALL = new Wanted(20, 10);
    private static final Wanted LARGE = new Wanted(40, 30);
    private static final List<Wanted> RUNGS = List.of(SMALL, LARGE);

    /** Boards that give just one large blank: every large piece in the rack that is surely asked for saves a board. */
    private static final List<ForSale> BOARDS = Collections.nCopies(4, new ForSale(40, 30, 1200));

    /** By hand: more large blanks are asked for than the pieces give, so a piece of 40 × 30 saves one board of 40 × 30. */
    @Test
    void a_piece_of_a_size_that_is_surely_asked_for_is_worth_the_board_it_saves() {
        double[] worth = LearnedWorth.of(RUNGS, List.of(), List.of(new LearnedWorth.Asked(LARGE, 3)), BOARDS, 6, 0, 1);
        assertThat(worth[1]).isGreaterThan(0.9);
        assertThat(worth[0]).isZero();
    }

    @Test
    void a_piece_more_is_worth_nothing_where_more_lie_than_are_asked_for_or_nothing_is_asked_for() {
        assertThat(LearnedWorth.of(
                        RUNGS,
                        Collections.nCopies(40, LARGE),
                        List.of(new LearnedWorth.Asked(LARGE, 1)),
                        BOARDS,
                        6,
                        0,
                        1))
                .containsOnly(0);
        assertThat(LearnedWorth.of(RUNGS, List.of(), List.of(), BOARDS, 6, 0, 1))
                .containsOnly(0);
    }

    @Test
    void small_pieces_are_worth_keeping_when_small_blanks_are_asked_for_and_the_same_state_says_the_same() {
        List<LearnedWorth.Asked> small = List.of(new LearnedWorth.Asked(SMALL, 8));
        double[] worth = LearnedWorth.of(RUNGS, List.of(), small, BOARDS, 6, 0, 1);
        assertThat(worth[0]).isGreaterThan(0.3);
        assertThat(worth[1]).isGreaterThanOrEqualTo(worth[0]);
        assertThat(LearnedWorth.of(RUNGS, List.of(), small, BOARDS, 6, 0, 1)).isEqualTo(worth);
    }

    /** By hand: two large pieces fill the rack; small ones are asked for from next week on, and are thrown away before. */
    @Test
    void a_small_piece_is_worth_nothing_in_a_rack_that_is_full_of_larger_ones() {
        List<LearnedWorth.Asked> later = List.of(new LearnedWorth.Asked(SMALL, List.of(0.0, 60.0)));
        List<Wanted> two = List.of(LARGE, LARGE);
        assertThat(LearnedWorth.of(RUNGS, two, later, BOARDS, 6, 0, 1)[0]).isGreaterThan(0.1);
        assertThat(LearnedWorth.of(RUNGS, two, later, BOARDS, 6, 2, 1)[0]).isZero();
    }

    /** Barlow, Bartholomew, Bremner and Brunk, Statistical Inference under Order Restrictions, 1972: by hand. */
    @Test
    void worths_that_fall_by_chance_are_averaged() {
        assertThat(LearnedWorth.neverFalling(new double[] {1, 3, 2, 4})).containsExactly(1, 2.5, 2.5, 4);
        assertThat(LearnedWorth.neverFalling(new double[] {3, 2, 1})).containsExactly(2, 2, 2);
    }

    /** By hand: always 2 of 10 × 10 a week would need one 20 × 10 a week; with Poisson counts some more. */
    @Test
    void the_cheapest_order_that_serves_is_advised_with_the_price_at_which_another_board_would_be() {
        ForSale small = new ForSale(10, 10, 100);
        ForSale large = new ForSale(20, 10, 300);
        BoardsToBuy.Advice advice = BoardsToBuy.advise(
                        List.of(new BoardsToBuy.Dealt(small, 1), new BoardsToBuy.Dealt(large, 1)),
                        BoardsToBuy.Stock.of(List.of()),
                        List.of(new LearnedWorth.Asked(new Wanted(10, 10), 0.5)),
                        0.9,
                        1)
                .orElseThrow();
        // Poisson of mean 1 is at most 2 with 0.920, at most 1 with 0.736: two small boards are enough and needed.
        assertThat(advice.counts()).containsExactly(2, 0);
        assertThat(advice.cost()).isEqualTo(200);
        assertThat(advice.service()).isBetween(0.9, 0.97);
        assertThat(advice.without()).isBetween(0.25, 0.50);
        assertThat(advice.breakEven().get(1).getAsLong()).isEqualTo(200);
        assertThat(advice.breakEven().get(0).getAsLong()).isEqualTo(150);
    }

    @Test
    void nothing_is_ordered_when_the_rack_serves() {
        BoardsToBuy.Advice advice = BoardsToBuy.advise(
                        List.of(new BoardsToBuy.Dealt(new ForSale(10, 10, 100), 1)),
                        BoardsToBuy.Stock.of(Collections.nCopies(12, new Wanted(10, 10))),
                        List.of(new LearnedWorth.Asked(new Wanted(10, 10), 1)),
                        0.95,
                        1)
                .orElseThrow();
        assertThat(advice.counts()).containsExactly(0);
        assertThat(advice.without()).isEqualTo(advice.service());
    }

    /**
     * By hand: 8 blanks a week, boards of ten. With an empty rack what comes after one week must hold the blanks of three weeks
     * before the cheaper dealer comes; 32 pieces in the rack last about that long, and only the cheaper one is needed.
     */
    @Test
    void a_cheap_dealer_who_comes_late_does_not_help_next_week() {
        BoardsToBuy.Dealt soon = new BoardsToBuy.Dealt(new ForSale(100, 10, 500), 1);
        BoardsToBuy.Dealt late = new BoardsToBuy.Dealt(new ForSale(100, 10, 300), 3);
        List<LearnedWorth.Asked> asked = List.of(new LearnedWorth.Asked(new Wanted(10, 10), 8));
        BoardsToBuy.Advice empty = BoardsToBuy.advise(
                        List.of(soon, late), BoardsToBuy.Stock.of(List.of()), asked, 0.9, 1)
                .orElseThrow();
        assertThat(empty.counts().getFirst()).isGreaterThanOrEqualTo(2);
        assertThat(empty.rackWeeks()).isZero();
        BoardsToBuy.Advice stocked = BoardsToBuy.advise(
                        List.of(soon, late),
                        BoardsToBuy.Stock.of(Collections.nCopies(32, new Wanted(10, 10))),
                        asked,
                        0.9,
                        1)
                .orElseThrow();
        assertThat(stocked.counts().getFirst()).isZero();
        assertThat(stocked.counts().getLast()).isPositive();
        assertThat(stocked.rackWeeks()).isBetween(2, 4);
    }
}
