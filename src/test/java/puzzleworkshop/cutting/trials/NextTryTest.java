package puzzleworkshop.cutting.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.settings.CommonPractice;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.NextTry;
import puzzleworkshop.cutting.settings.SettingState;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.cutting.settings.Trial.Finding;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.cutting.settings.TrialEvidence;
import puzzleworkshop.cutting.time.CutTimeTest;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Speed;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class NextTryTest {

    private static final Machine MACHINE = CutTimeTest.machine(60, 0.02);
    private static final BoardKind CRAFT = new BoardKind("BIRCH", "CRAFT", Length.mm(3));
    private final List<Trial> trials = new ArrayList<>();

    /** Definition: P · power% · passes / speed. 20 W at 300 mm/min: 4 J/mm; two passes 8; at 80 % 3.2. */
    @Test
    void line_energy_is_power_times_passes_over_speed() {
        assertThat(parameters(300, 100, 1).lineEnergy(MACHINE.beam())).isCloseTo(4, within(1e-9));
        assertThat(parameters(300, 100, 2).lineEnergy(MACHINE.beam())).isCloseTo(8, within(1e-9));
        assertThat(parameters(300, 80, 1).lineEnergy(MACHINE.beam())).isCloseTo(3.2, within(1e-9));
    }

    /** Common practice: 4 J/mm for 3 mm craft ply. */
    @Test
    void begins_near_common_practice_with_some_reserve() {
        NextTry first = next();
        assertThat(first.lineEnergy()).isBetween(4.0, 5.4);
        assertThat(first.reason().key()).isEqualTo("cutting.next.first");
        assertThat(first.parameters().airAssist()).isTrue();
        assertThat(first.parameters().gap()).isEqualTo(MACHINE.beam().lensGap());
    }

    @Test
    void a_head_too_high_is_set_right_before_anything_else() {
        tried(parameters(300, 100, 1), SimulatedBoards.finding(Result.NOT_THROUGH, 1, 4.5));
        NextTry next = next();
        assertThat(next.setGapFirst()).isTrue();
        assertThat(next.reason().key()).isEqualTo("cutting.next.gap.high");
        assertThat(next.reason().arguments()).contains(1, 4.0, Length.mm(1.5), Length.mm(3));
        assertThat(next.parameters().gap()).isEqualTo(Length.mm(3));
    }

    @Test
    void with_the_gap_right_a_cut_that_holds_asks_for_clearly_more() {
        tried(parameters(300, 100, 1), SimulatedBoards.finding(Result.NOT_THROUGH, 0, 3.0));
        NextTry next = next();
        assertThat(next.setGapFirst()).isFalse();
        assertThat(next.reason().key()).isEqualTo("cutting.next.more.not");
        assertThat(next.lineEnergy()).isGreaterThan(4.6);
    }

    @Test
    void a_cut_that_hangs_by_fibres_asks_for_less_more_than_one_that_holds() {
        tried(parameters(300, 100, 1), Finding.of(Result.PARTLY, 0));
        double partly = next().lineEnergy();
        trials.clear();
        tried(parameters(300, 100, 1), Finding.of(Result.NOT_THROUGH, 0));
        assertThat(next().lineEnergy()).isGreaterThan(partly);
    }

    @Test
    void a_charred_edge_asks_for_less() {
        tried(parameters(200, 100, 1), Finding.of(Result.THROUGH, 3));
        assertThat(next().parameters().passEnergy(MACHINE.beam())).isLessThan(5.5);
        assertThat(next().reason().key()).isIn("cutting.next.less.charred", "cutting.next.passes.charred");
    }

    @Test
    void between_not_through_and_charred_it_tries_the_middle_or_faster_passes() {
        tried(parameters(300, 100, 1), Finding.of(Result.NOT_THROUGH, 1));
        tried(parameters(200, 100, 1), Finding.of(Result.THROUGH, 3));
        NextTry next = next();
        if (next.parameters().passes() == 1) {
            assertThat(next.lineEnergy()).isBetween(4.0, 6.0);
            assertThat(next.reason().key()).isEqualTo("cutting.next.between");
        } else {
            assertThat(next.reason().key()).startsWith("cutting.next.passes");
        }
    }

    @Test
    void where_one_pass_either_holds_or_chars_it_goes_to_faster_passes() {
        tried(parameters(300, 100, 1), Finding.of(Result.NOT_THROUGH, 2));
        tried(parameters(285, 100, 1), Finding.of(Result.THROUGH, 4));
        tried(parameters(292, 100, 1), Finding.of(Result.THROUGH, 3));
        NextTry next = next();
        assertThat(next.parameters().passes()).isGreaterThan(1);
        assertThat(next.reason().key()).isEqualTo("cutting.next.passes.charred");
        assertThat(next.parameters().passEnergy(MACHINE.beam())).isLessThan(4);
    }

    @Test
    void a_good_cut_is_repeated_until_it_is_proven() {
        CutParameters good = parameters(250, 100, 1);
        tried(good, Finding.of(Result.THROUGH, 1));
        NextTry next = next();
        assertThat(next.parameters().lineEnergy(MACHINE.beam()))
                .as("the same, or nearer to the middle of what is good")
                .isCloseTo(good.lineEnergy(MACHINE.beam()), within(0.6));
        assertThat(next.reason().key()).isIn("cutting.next.again", "cutting.next.middle");
    }

    @Test
    void without_air_it_asks_for_air_first() {
        tried(
                new CutParameters(Speed.mmPerMinute(300), Percent.of(100), 1, false, Length.mm(3)),
                Finding.of(Result.PARTLY, 3));
        assertThat(next().reason().key()).isEqualTo("cutting.next.air");
    }

    @Test
    void good_ones_in_a_row_prove_a_setting_and_failures_make_it_doubtful_until_it_is_good_again() {
        CutParameters used = parameters(275, 100, 1);
        Finding good = Finding.of(Result.THROUGH, 2);
        assertThat(state(used)).isEqualTo(SettingState.UNTRIED);
        tried(used, good);
        assertThat(state(used)).isEqualTo(SettingState.TRYING);
        tried(used, good);
        tried(used, good);
        assertThat(state(used)).isEqualTo(SettingState.PROVEN);
        tried(used, Finding.of(Result.PARTLY, 1));
        assertThat(state(used)).isEqualTo(SettingState.PROVEN);
        tried(used, Finding.of(Result.PARTLY, 1));
        assertThat(state(used)).isEqualTo(SettingState.DOUBTFUL);
        for (int i = 0; i < TrialEvidence.ROW_THAT_PROVES; i++) {
            tried(used, good);
        }
        assertThat(state(used)).isEqualTo(SettingState.PROVEN);
    }

    /** An edge that was too dark once says that the setting lies near the end of what is good. */
    @Test
    void after_a_dark_edge_three_good_ones_are_not_enough() {
        CutParameters used = parameters(250, 100, 1);
        tried(used, Finding.of(Result.THROUGH, 2));
        tried(used, Finding.of(Result.THROUGH, 3));
        for (int i = 0; i < 3; i++) {
            tried(used, Finding.of(Result.THROUGH, 2));
        }
        assertThat(state(used)).isEqualTo(SettingState.TRYING);
        tried(used, Finding.of(Result.THROUGH, 2));
        tried(used, Finding.of(Result.THROUGH, 2));
        assertThat(state(used)).isEqualTo(SettingState.PROVEN);
    }

    @Test
    void a_cut_with_the_head_too_high_does_not_make_a_proven_setting_doubtful() {
        CutParameters used = parameters(250, 100, 1);
        for (int i = 0; i < 3; i++) {
            tried(used, Finding.of(Result.THROUGH, 1));
        }
        for (int i = 0; i < 3; i++) {
            tried(used, SimulatedBoards.finding(Result.NOT_THROUGH, 1, 5));
        }
        assertThat(state(used)).isEqualTo(SettingState.PROVEN);
    }

    private SettingState state(CutParameters parameters) {
        return new TrialEvidence(MACHINE, CRAFT, trials).stateOf(parameters);
    }

    private void tried(CutParameters parameters, Finding finding) {
        trials.add(SimulatedBoards.trial(trials.size() + 1, parameters, finding));
    }

    private NextTry next() {
        TrialEvidence evidence = new TrialEvidence(MACHINE, CRAFT, trials);
        CutParameters usual = CommonPractice.parametersFor(MACHINE, CRAFT);
        return NextTry.after(MACHINE, CRAFT, evidence, evidence.best(usual)).orElseThrow();
    }

    private static CutParameters parameters(double mmPerMinute, int percent, int passes) {
        return new CutParameters(Speed.mmPerMinute(mmPerMinute), Percent.of(percent), passes, true, Length.mm(3));
    }
}
