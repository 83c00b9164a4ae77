package puzzleworkshop.wood.ahead;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.wood.play.ForSale;
import puzzleworkshop.wood.play.Futures;
import puzzleworkshop.wood.play.OpenBoard;
import puzzleworkshop.wood.play.Wanted;
import puzzleworkshop.wood.play.WoodCase;
import puzzleworkshop.wood.play.WoodPeriod;
import puzzleworkshop.wood.play.WoodPlay;
import puzzleworkshop.wood.play.WoodState;

@DisplayNameGeneration(ReplaceUnderscores.class)
class AsBeforeTest {

    private static final Wanted BLANK = new Wanted(10, 10);
    private static final ForSale FOR_ONE = new ForSale(10, 10, 100);
    private static final ForSale FOR_TWO = new ForSale(20, 10, 140);
    private static final WoodPeriod ONE_FOR_SALE = new WoodPeriod(List.of(FOR_ONE), List.of(BLANK));
    private static final WoodPeriod BOTH_FOR_SALE = new WoodPeriod(List.of(FOR_ONE, FOR_TWO), List.of(BLANK));
    private static final WoodPeriod QUIET = new WoodPeriod(List.of(FOR_ONE), List.of());

    /**
     * By hand: the rule before has paid 100 in the past and pays 100 now. Now 40 more, on the larger board, save 100 next week,
     * three times of five. Who has saved nothing then pays 240 in all, the rule 300 or 200, on the mean 260; but where it pays 200,
     * 36 more than allowed count four times again: 240 + 2/5 × 4 × 36 = 298, so it is not done. Who has paid 100 less so far pays
     * 140 and never loses against the rule.
     */
    @Test
    void what_was_saved_before_is_risked_and_nothing_else() {
        Futures either = (state, n, random) -> List.of(random.nextInt(5) < 3 ? ONE_FOR_SALE : QUIET);
        for (long paid : new long[] {100, 0}) {
            WoodState state = state(paid);
            assertThat(WoodPeers.lookAhead(either, 1).decide(state).bought()).containsExactly(paid == 0 ? 1 : 0);
        }
    }

    /** By hand: 100 in the past, 100 now, then 100 for the blank to come, or nothing when none comes. */
    @Test
    void the_account_goes_on_as_without_looking_ahead() {
        AsBefore account = account();
        account.meet(new Course(List.of(ONE_FOR_SALE), 100));
        account.meet(new Course(List.of(QUIET), 100));
        assertThat(account.totals(2)).containsExactly(300, 200);
        assertThat(account.totals(1)).containsExactly(300);
    }

    /** By hand: 306 is 2 % above 300 and counts as it is; 226 is 22 above what is allowed beside 200, 204, and they count five times. */
    @Test
    void what_is_lost_against_the_account_beyond_two_in_a_hundred_counts_five_times() {
        AsBefore account = account();
        account.meet(new Course(List.of(ONE_FOR_SALE), 100));
        account.meet(new Course(List.of(QUIET), 100));
        assertThat(account.weighed(new double[] {306, 226})).containsExactly(306, 204 + 5 * 22);
        assertThat(account.weighed(new double[] {290, 100})).containsExactly(290, 100);
    }

    @Test
    void who_did_as_before_stands_where_the_account_stands() {
        AsBefore account = account();
        OpenBoard used = new OpenBoard(7, 10, 10);
        used.cut(0, 0, 10, 10);
        assertThat(account.is(200, List.of())).isTrue();
        assertThat(account.is(200, List.of(used))).isTrue();
        assertThat(account.is(201, List.of())).isFalse();
        assertThat(account.is(200, List.of(new OpenBoard(7, 10, 10)))).isFalse();
    }

    @Test
    void a_decision_is_told_what_was_paid_before_blanks_without_a_board_included() {
        WoodPeriod stranded = new WoodPeriod(List.of(), List.of(BLANK));
        WoodCase three = new WoodCase("three", false, 0, List.of(), List.of(BOTH_FOR_SALE, stranded, ONE_FOR_SALE));
        List<Long> told = new ArrayList<>();
        WoodPlay.Result result = WoodPlay.play(three, state -> {
            told.add(state.paid());
            return WoodPeers.nearest().decide(state);
        });
        assertThat(told).containsExactly(0L, 100L, 240L);
        assertThat(result.cost()).isEqualTo(340);
        assertThat(result.rack()).isEmpty();
    }

    private static AsBefore account() {
        return new AsBefore(state(100), WoodPeers.nearest());
    }

    /** One blank was asked for in the past, then nothing for long. */
    private static WoodState state(long paid) {
        List<WoodPeriod> past = new ArrayList<>(Collections.nCopies(18, QUIET));
        past.addFirst(ONE_FOR_SALE);
        return new WoodState(20 + 1, false, 0, List.of(BLANK), past, BOTH_FOR_SALE, List.of(), 1, paid);
    }
}
