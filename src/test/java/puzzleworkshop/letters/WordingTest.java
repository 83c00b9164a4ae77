package puzzleworkshop.letters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.display.Texts;
import puzzleworkshop.measure.Refused;

@DisplayNameGeneration(ReplaceUnderscores.class)
class WordingTest {

    private static final Texts TEXTS = new Texts();

    private static Wording wording(LetterKind kind, String body) {
        return new Wording(kind, "Your puzzle {order}", body);
    }

    private static String filled(String body, Map<LetterField, String> values) {
        return wording(LetterKind.ON_ITS_WAY, body).filled(values).body();
    }

    @Test
    void fields_are_filled_in_by_their_names() {
        assertThat(filled(
                        "Dear {customer}, number {tracking}.",
                        Map.of(LetterField.CUSTOMER, "Ada {order}", LetterField.TRACKING, "RR1")))
                .as("what is filled in is not read again")
                .isEqualTo("Dear Ada {order}, number RR1.");
    }

    @Test
    void a_part_in_brackets_is_left_out_when_its_field_has_nothing_to_say() {
        String body = "It has left[ with {carrier}].[\n{tracking_link}]\n\nBye";
        assertThat(filled(body, Map.of())).isEqualTo("It has left.\n\nBye");
        assertThat(filled(body, Map.of(LetterField.CARRIER, "the post")))
                .isEqualTo("It has left with the post.\n\nBye");
    }

    @Test
    void a_field_outside_brackets_that_has_nothing_to_say_is_named() {
        assertThat(wording(LetterKind.ON_ITS_WAY, "Number {tracking}")
                        .filled(Map.of())
                        .missing())
                .containsExactlyInAnyOrder(LetterField.TRACKING, LetterField.ORDER);
    }

    @Test
    void doubled_signs_stand_for_themselves() {
        assertThat(filled("{{order}} [[x]]", Map.of())).isEqualTo("{order} [x]");
    }

    @Test
    void an_unknown_field_or_one_of_another_letter_is_refused_with_those_that_are_known() {
        assertThatThrownBy(() -> wording(LetterKind.THANK_YOU, "{tracing}").checked())
                .isInstanceOf(Refused.class)
                .hasMessageContaining("letters.wording.field")
                .hasMessageContaining("tracing")
                .hasMessageContaining("{pieces}");
        assertThatThrownBy(() -> wording(LetterKind.THANK_YOU, "{open}").checked())
                .isInstanceOf(Refused.class);
    }

    @Test
    void signs_without_a_partner_are_refused() {
        for (String body : new String[] {"a { b", "a } b", "a [ b", "a ] b", "[a [b] c]", "{order"}) {
            assertThatThrownBy(() -> wording(LetterKind.QUOTE, body).checked())
                    .as(body)
                    .isInstanceOf(Refused.class);
        }
    }

    @Test
    void a_subject_is_one_line_whatever_is_filled_in() {
        Wording wording = new Wording(LetterKind.QUOTE, "For {customer}", "x");
        assertThat(wording.filled(Map.of(LetterField.CUSTOMER, "Ada\r\nBcc: eve@example.org"))
                        .subject())
                .isEqualTo("For Ada, Bcc: eve@example.org");
        assertThatThrownBy(() -> new Wording(LetterKind.QUOTE, "a\nb", "x").checked())
                .isInstanceOf(Refused.class);
    }

    /** Every letter that comes with the program can be saved as it is, and is whole with every field known. */
    @Test
    void the_programs_own_words_can_be_kept_and_leave_nothing_open() {
        Map<LetterField, String> all = new EnumMap<>(LetterField.class);
        for (LetterField field : LetterField.values()) {
            all.put(field, "‹" + field.word() + "›");
        }
        for (LetterKind kind : LetterKind.values()) {
            Wording standard = new Wording(
                    kind,
                    TEXTS.getTranslation("letters.standard." + kind.name() + ".subject", Texts.LOCALE),
                    TEXTS.getTranslation("letters.standard." + kind.name() + ".body", Texts.LOCALE));
            Wording.Filled filled = standard.checked().filled(all);
            assertThat(filled.missing()).isEmpty();
            assertThat(filled.subject() + filled.body())
                    .as(kind.name())
                    .contains("‹customer›")
                    .doesNotContain("{", "}", "[", "]", "''", "letters.");
        }
    }

    @Test
    void a_page_shows_the_words_and_only_our_own_markup() {
        String page = LetterHtml.of(
                "T", "a < b & \"c\"\nline\n\nsee https://x.example/p?a=1&b=2.", "cid:logo.png", "L", "", "");
        assertThat(page)
                .contains("<p>a &lt; b &amp; &quot;c&quot;<br>\nline</p>")
                .contains("<a href=\"https://x.example/p?a=1&amp;b=2\">https://x.example/p?a=1&amp;b=2</a>.</p>")
                .contains("src=\"cid:logo.png\"")
                .doesNotContain("<script");
    }

    @Test
    void reminders_go_in_three_steps_and_then_no_further() {
        var steps = new ReminderSteps(7, 14, 10);
        var due = LocalDate.of(2026, 3, 1);
        assertThat(steps.next(due, Optional.empty()))
                .contains(new ReminderSteps.Due(LetterKind.FIRST_REMINDER, due.plusDays(7)));
        var first = new ReminderSteps.Written(LetterKind.FIRST_REMINDER, due.plusDays(9));
        assertThat(steps.next(due, Optional.of(first)))
                .contains(new ReminderSteps.Due(LetterKind.SECOND_REMINDER, due.plusDays(23)));
        var second = new ReminderSteps.Written(LetterKind.SECOND_REMINDER, due.plusDays(23));
        assertThat(steps.next(due, Optional.of(second)))
                .contains(new ReminderSteps.Due(LetterKind.LAST_REMINDER, due.plusDays(33)));
        var last = new ReminderSteps.Written(LetterKind.LAST_REMINDER, due.plusDays(33));
        assertThat(steps.next(due, Optional.of(last))).isEmpty();
        assertThatThrownBy(() -> new ReminderSteps(0, 1, 1)).isInstanceOf(Refused.class);
    }
}
