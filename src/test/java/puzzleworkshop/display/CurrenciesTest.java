package puzzleworkshop.display;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Currency;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class CurrenciesTest {

    /** Kinds of codes as ISO 4217 lists them: tender, units of funds, metals, codes for testing, withdrawn ones. */
    @Test
    void what_people_pay_with_is_offered_and_nothing_else() {
        assertThat(Currencies.inUse())
                .extracting(Currency::getCurrencyCode)
                .contains("EUR", "GBP", "USD", "CHF", "JPY", "SEK", "PLN")
                .doesNotContain("CHE", "CHW", "USN", "CLF", "XAU", "XTS", "DEM", "FRF", "HRK")
                .isSorted();
        // metals, and the codes for tests and for no currency at all, have no smallest coin
        assertThat(Currencies.inUse()).allMatch(currency -> currency.getDefaultFractionDigits() >= 0);
    }
}
