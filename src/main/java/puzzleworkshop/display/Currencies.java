package puzzleworkshop.display;

import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;

/** The currencies that a workshop may work in. */
public final class Currencies {

    private Currencies() {}

    /**
     * Those that some country pays with today, by their ISO 4217 codes: neither historic ones nor metals, units of funds
     * and other codes that nobody pays with.
     */
    public static List<Currency> inUse() {
        return Stream.of(Locale.getISOCountries())
                .map(country -> Currency.getInstance(Locale.of("", country)))
                .filter(Objects::nonNull)
                .distinct()
                .sorted(Comparator.comparing(Currency::getCurrencyCode))
                .toList();
    }
}
