package puzzleworkshop.delivery.returns;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.cutting.settings.CommonPractice;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.SettingState;
import puzzleworkshop.cutting.time.CutTimeTest;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;

@DisplayNameGeneration(ReplaceUnderscores.class)
class ComplaintWordsTest {

    /** Figures once said 'Percent[hundredths=1E+2], 2'. */
    @Test
    void a_complaint_keeps_the_setting_in_words_that_are_read_at_the_machine() {
        Machine machine = CutTimeTest.machine(100, 0.05);
        BoardKind board = new BoardKind("birch-ply", "CRAFT", Length.mm(3));
        CutSetting setting =
                new CutSetting(1, machine, board, CommonPractice.parametersFor(machine, board), SettingState.UNTRIED);
        assertThat(Complaints.words(setting))
                .startsWith(machine.name() + ", ")
                .matches(".*, \\d+ mm/min, \\d+ %, \\d ×");
    }
}
