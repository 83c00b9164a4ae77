package puzzleworkshop.cutting.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.SettingState;
import puzzleworkshop.cutting.settings.SuccessBound;
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
class TrialEvidenceRulesTest {

    private static final Machine MACHINE = CutTimeTest.machine(60, 0.02);
    private static final BoardKind CRAFT = new BoardKind("BIRCH", "CRAFT", Length.mm(3));
    private static final CutParameters USED =
            new CutParameters(Speed.mmPerMinute(250), Percent.of(100), 1, true, Length.mm(3));

    /** All good: 0.05^(1/n), the closed form of Clopper and Pearson, Biometrika 26 (1934); 8 of 10 computed apart. */
    @ParameterizedTest
    @CsvSource({"3,3,0.3684", "5,5,0.5493", "10,10,0.7411", "29,29,0.9019", "59,59,0.9505", "8,10,0.4931", "0,4,0"})
    void so_many_good_cuts_make_us_so_sure(int good, int cuts, double bound) {
        assertThat(new SuccessBound(good, cuts).atLeast()).isCloseTo(bound, within(6e-5));
    }

    /** The error rates that TrialEvidence states: doubtful at some time within twenty cuts after it was proven. */
    @ParameterizedTest
    @CsvSource({"0.95,0.11", "0.80,0.75", "0.50,0.995"})
    @Tag("slow")
    @Tag("far")
    void a_proven_setting_becomes_doubtful_as_often_as_is_stated(double share, double stated) {
        Random random = new Random(20);
        int doubtful = 0;
        int runs = 1500;
        for (int run = 0; run < runs; run++) {
            List<Trial> trials = new ArrayList<>();
            boolean fell = false;
            for (int cut = 0; cut < 23 && !fell; cut++) {
                boolean good = cut < TrialEvidence.GOOD_IN_A_ROW || random.nextDouble() < share;
                trials.add(SimulatedBoards.trial(
                        cut + 1, USED, good ? Finding.of(Result.THROUGH, 1) : Finding.of(Result.PARTLY, 1)));
                fell = new TrialEvidence(MACHINE, CRAFT, trials).stateOf(USED) == SettingState.DOUBTFUL;
            }
            doubtful += fell ? 1 : 0;
        }
        assertThat((double) doubtful / runs).isCloseTo(stated, within(0.04));
    }

    @org.junit.jupiter.api.Test
    void real_cuts_go_on_being_counted() {
        List<Trial> trials = new ArrayList<>();
        for (int cut = 0; cut < 10; cut++) {
            trials.add(SimulatedBoards.trial(cut + 1, USED, Finding.of(Result.THROUGH, 1)));
        }
        assertThat(new TrialEvidence(MACHINE, CRAFT, trials).bound(USED)).isEqualTo(new SuccessBound(10, 10));
    }
}
