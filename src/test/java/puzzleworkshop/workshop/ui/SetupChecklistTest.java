package puzzleworkshop.workshop.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.support.MetricHouse;

/** The list of what a workshop that starts empty does first, and what it says once the first order was taken. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class SetupChecklistTest {

    @Test
    void it_speaks_of_the_first_order_only_until_there_was_one() {
        String before = words(new Step(20, "sheets.first", false), new Step(90, "orders.first", false));
        assertThat(before).contains("Before the first order");
        String after = words(new Step(20, "sheets.first", false), new Step(90, "orders.first", true));
        assertThat(after).contains("Still to set up").doesNotContain("Before the first order");
    }

    private static String words(SetupStep... steps) {
        return new SetupChecklist(List.of(steps), MetricHouse.figures())
                .getElement()
                .getTextRecursively();
    }

    private record Step(int place, String key, boolean done) implements SetupStep {
        @Override
        public String path() {
            return "somewhere";
        }
    }
}
