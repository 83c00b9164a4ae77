package puzzleworkshop.access.roles;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Sentence;

@DisplayNameGeneration(ReplaceUnderscores.class)
class WithoutMoneyTest {

    record Part(String name, Money cost, Length length) {}

    record Whole(List<Part> parts, Map<String, Optional<Money>> byName, Sentence why, int number) {}

    private static final Money TEN = Money.of("10.00", "EUR");

    @Test
    void amounts_anywhere_become_zero_and_all_else_stays() {
        Part part = new Part("paper", TEN, Length.mm(3));
        Whole whole = new Whole(List.of(part), Map.of("a", Optional.of(TEN)), Sentence.of("room.key", TEN), 7);
        Whole without = (Whole) WithoutMoney.of(whole);
        Money nothing = Money.zero(TEN.currency());
        assertThat(without.parts()).containsExactly(new Part("paper", nothing, Length.mm(3)));
        assertThat(without.byName()).isEqualTo(Map.of("a", Optional.of(nothing)));
        assertThat(without.why()).isEqualTo(WithoutMoney.NOT_TOLD);
        assertThat(without.number()).isEqualTo(7);
    }

    @Test
    void what_holds_no_money_is_the_very_same() {
        Sentence plain = Sentence.of("room.key", 3, "2026-12-19", Length.mm(4));
        assertThat(WithoutMoney.of(plain)).isSameAs(plain);
        assertThat(WithoutMoney.of(Length.mm(4))).isEqualTo(Length.mm(4));
        assertThat(WithoutMoney.of(null)).isNull();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"€10.00", "-£5", "£ 5.50", "US$12", "12.00 EUR", "CHF 10.00", "10,00 €", "¥1200", "paid £20 cash"
            })
    void an_amount_is_known_by_its_currency_in_words_too(String words) {
        assertThat(WithoutMoney.of(Sentence.of("room.key", words))).isEqualTo(WithoutMoney.NOT_TOLD);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"Ada Reed", "2026-0012", "300 × 200 mm", "3 mm", "12.5 %", "TRY again 3 times", "B2", "18 min"})
    void other_words_and_figures_are_none(String words) {
        Sentence sentence = Sentence.of("room.key", words);
        assertThat(WithoutMoney.of(sentence)).isSameAs(sentence);
    }
}
