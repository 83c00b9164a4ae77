package puzzleworkshop.workshop.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Currency;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.HouseUnits;
import puzzleworkshop.display.Texts;
import puzzleworkshop.measure.UnitSystem;

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
        return new SetupChecklist(List.of(steps), figures()).getElement().getTextRecursively();
    }

    private record Step(int place, String key, boolean done) implements SetupStep {
        @Override
        public String path() {
            return "somewhere";
        }
    }

    private static Formatter figures() {
        return new Formatter(new Texts(), new HouseUnits() {
            @Override
            public UnitSystem units() {
                return UnitSystem.MILLIMETRES;
            }

            @Override
            public Currency currency() {
                return Currency.getInstance("EUR");
            }

            @Override
            public ZoneId zone() {
                return ZoneId.of("UTC");
            }

            @Override
            public LocalDate today() {
                return LocalDate.of(2026, 11, 29);
            }
        });
    }
}
