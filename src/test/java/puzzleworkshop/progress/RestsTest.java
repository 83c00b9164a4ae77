package puzzleworkshop.progress;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.StageStandard;

@DisplayNameGeneration(ReplaceUnderscores.class)
class RestsTest {

    private static final Instant NINE = Instant.parse("2026-12-01T09:00:00Z");

    private static final Map<Stage, StageStandard> TWELVE_HOURS_AFTER_LAMINATING = Arrays.stream(Stage.values())
            .map(stage -> new StageStandard(
                    stage,
                    Minutes.ZERO,
                    Minutes.of(5),
                    Minutes.ZERO,
                    stage == Stage.LAMINATE ? Duration.ofHours(12) : Duration.ZERO,
                    Percent.of(0)))
            .collect(Collectors.toMap(StageStandard::stage, Function.identity()));

    @Test
    void laminate_holds_up_sticking_also_after_the_board_was_prepared() {
        Map<Stage, Instant> done = Map.of(Stage.LAMINATE, NINE, Stage.SHEET_PREP, NINE.plusSeconds(600));
        assertThat(Rests.until(done, Stage.STICK, TWELVE_HOURS_AFTER_LAMINATING))
                .containsEntry(Stage.STICK, NINE.plus(Duration.ofHours(12)));
    }

    @Test
    void the_board_itself_need_not_wait_for_it() {
        Map<Stage, Instant> until =
                Rests.until(Map.of(Stage.LAMINATE, NINE), Stage.SHEET_PREP, TWELVE_HOURS_AFTER_LAMINATING);
        assertThat(until).containsOnlyKeys(Stage.STICK);
    }

    @Test
    void laminate_of_a_print_that_is_made_again_rests_no_more() {
        assertThat(Rests.until(Map.of(Stage.LAMINATE, NINE), Stage.PRINT, TWELVE_HOURS_AFTER_LAMINATING))
                .isEmpty();
    }
}
