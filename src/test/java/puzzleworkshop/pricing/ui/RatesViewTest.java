package puzzleworkshop.pricing.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.slider.IntegerSlider;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.papers.SoldOrders;
import puzzleworkshop.pricing.rates.ListPrice;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.pricing.rates.RateKind;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.ScreenTest;

@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class RatesViewTest extends ScreenTest {

    @Autowired
    RateBook book;

    @Autowired
    BeanFactory beans;

    @Autowired
    DataSource database;

    @BeforeEach
    void an_empty_workshop() {
        CleanDatabase.now(database);
    }

    @Test
    void a_rate_shows_which_open_quotes_would_move_before_it_is_saved_and_holds_from_its_day() {
        String number =
                new SoldOrders(beans).quote("Ada Reed", 1, false, Percent.ZERO).number();
        navigate(RatesView.class);
        pressSpoken("Change: An hour of hands");
        number("Value").setValue(new BigDecimal("36"));
        assertThat(find(ListItem.class).all()).anyMatch(item -> item.getText().startsWith(number + ": €"));
        assertThat(book.on(book.today()).number(RateKind.WAGE_HOUR)).isEqualByComparingTo("24");
        test(find(Button.class).withText("Save").single()).click();
        assertThat(book.on(book.today()).number(RateKind.WAGE_HOUR)).isEqualByComparingTo("36");
        LocalDate yesterday = book.today().minusDays(1);
        assertThat(book.on(yesterday).number(RateKind.WAGE_HOUR)).isEqualByComparingTo("24");
        assertThat(find(Button.class).all()).anyMatch(button -> button.getText().equals("€36.00"));
    }

    @Test
    void a_margin_that_is_dragged_up_raises_the_price_of_every_quantity_and_is_kept_nowhere() {
        navigate(RatesView.class);
        List<BigDecimal> before = steps();
        IntegerSlider margin = find(IntegerSlider.class).all().stream()
                .filter(slider -> slider.getAriaLabel().orElse("").equals("Margin, %"))
                .findFirst()
                .orElseThrow();
        margin.setValue(60);
        List<BigDecimal> after = steps();
        assertThat(after).hasSameSizeAs(before);
        for (int i = 0; i < before.size(); i++) {
            assertThat(after.get(i)).isGreaterThan(before.get(i));
        }
        // Set-up is shared: each of more puzzles costs less than each of fewer.
        assertThat(after).isSortedAccordingTo((a, b) -> b.compareTo(a));
        assertThat(book.rule(book.today()).margin()).isEqualTo(Percent.of(40));
    }

    @Test
    void a_listed_price_below_its_cost_is_flagged() {
        book.setList(
                book.today(),
                List.of(
                        new ListPrice(Length.mm(300), Length.mm(200), 60, Money.of("5", "EUR")),
                        new ListPrice(Length.mm(420), Length.mm(297), 300, Money.of("400", "EUR"))),
                "Robin");
        navigate(RatesView.class);
        assertThat(find(Verdict.class).all())
                .extracting(Verdict::words)
                .anyMatch(word -> word.contains("Below cost"))
                .anyMatch(word -> word.contains("Earns"));
    }

    @Test
    void a_rule_with_impossible_price_points_is_refused_and_a_good_one_holds() {
        navigate(RatesView.class);
        number("Price points every").setValue(BigDecimal.ONE);
        number("Price points end in").setValue(new BigDecimal("1.90"));
        test(find(Button.class).withText("Save rule").single()).click();
        assertThat(book.rule(book.today()).points().step()).isEqualByComparingTo("0.01");
        number("Price points end in").setValue(new BigDecimal("0.90"));
        vat().setValue(VatMode.INCLUDED);
        test(find(Button.class).withText("Save rule").single()).click();
        assertThat(book.rule(book.today()).points().ending()).isEqualByComparingTo("0.90");
        assertThat(book.rule(book.today()).vatMode()).isEqualTo(VatMode.INCLUDED);
    }

    @SuppressWarnings("unchecked")
    private Select<VatMode> vat() {
        return (Select<VatMode>) find(Select.class).all().stream()
                .filter(select -> "VAT".equals(select.getLabel()))
                .findFirst()
                .orElseThrow();
    }

    /** The price of one puzzle for each quantity of the table of steps. */
    private List<BigDecimal> steps() {
        List<String> cells = find(Span.class).all().stream()
                .filter(span -> span.getParent()
                        .filter(box -> box.hasClassName("pricing-steps"))
                        .isPresent())
                .map(Span::getText)
                .toList();
        return java.util.stream.IntStream.range(1, cells.size() / 4)
                .mapToObj(row -> new BigDecimal(cells.get(row * 4 + 1).replaceAll("[^0-9.]", "")))
                .toList();
    }
}
