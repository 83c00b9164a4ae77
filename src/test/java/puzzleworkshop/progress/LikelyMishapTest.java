package puzzleworkshop.progress;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.progress.Rework.What;
import puzzleworkshop.workshop.Stage;

/** What a stage offers first is what comes up there (common practice of the trade), not what belongs to the print. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class LikelyMishapTest {

    @ParameterizedTest
    @CsvSource({
        "PRINT, PRINT_FAULT",
        "LAMINATE, BUBBLES",
        "SHEET_PREP, BOARD_BOWED",
        "STICK, STUCK_ASKEW",
        "MASK, MASK_TORN",
        "CUT, NOT_THROUGH",
        "HAND_OVER, RETURNED"
    })
    void each_stage_begins_with_its_own_mishap(Stage stage, What likely) {
        assertThat(What.likelyAt(stage)).isEqualTo(likely);
    }

    @ParameterizedTest
    @CsvSource({
        "CUT, THROUGH, 0, SHIFTED",
        "CUT, THROUGH, 3, CHARRED",
        "CUT, PARTLY, 0, NOT_THROUGH",
        "FINISH, THROUGH, 0, SHIFTED",
        "HAND_OVER, THROUGH, 0, RETURNED",
        "STICK, THROUGH, 0, STUCK_ASKEW"
    })
    void what_was_written_down_of_the_cut_is_not_contradicted(
            Stage stage, Trial.Result result, int charring, What likely) {
        assertThat(What.likelyAt(stage, Optional.of(Trial.Finding.of(result, charring))))
                .isEqualTo(likely);
    }

    @ParameterizedTest
    @CsvSource({
        "CUT, PRINT, BLANK_SPOILED",
        "CUT, STICK, BLANK_SPOILED",
        "MASK, PRINT, BLANK_SPOILED",
        "CUT, CUT, KEPT",
        "MASK, MASK, KEPT",
        "STICK, PRINT, KEPT",
        "LAMINATE, PRINT, KEPT",
        "FINISH, PRINT, KEPT"
    })
    void a_print_made_anew_after_it_was_stuck_takes_its_blank_with_it(Stage noticed, Stage from, Rework.Board likely) {
        assertThat(Rework.Board.likely(noticed, from)).isEqualTo(likely);
    }

    @ParameterizedTest
    @EnumSource(Stage.class)
    void what_is_likely_can_have_happened_by_then(Stage stage) {
        assertThat(What.at(stage)).contains(What.likelyAt(stage));
    }
}
