package puzzleworkshop.wood.ahead;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.wood.play.ForSale;
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

    /** By hand: 100 in the past, 100 now, then 100 for the blank to come, or nothing when none comes. */
    @Test
    void the_account_goes_on_as_without_looking_ahead() {
        AsBefore account = account();
        account.meet(new Course(List.of(ONE_FOR_SALE), 100));
        account.meet(new Course(List.of(QUIET), 100));
        assertThat(account.totals(2)).containsExactly(300, 200);
        assertThat(account.totals(1)).containsExactly(300);
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
