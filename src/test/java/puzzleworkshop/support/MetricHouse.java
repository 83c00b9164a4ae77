package puzzleworkshop.support;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Currency;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.HouseUnits;
import puzzleworkshop.display.Texts;
import puzzleworkshop.measure.UnitSystem;

/** A workshop that counts in millimetres and euros, on a day of its own; for tests that need figures and texts but no database. */
public record MetricHouse(LocalDate today) implements HouseUnits {

    /** Figures as that workshop shows them. Every text of the house is read for it: one serves a whole class. */
    public static Formatter figures() {
        return new Formatter(new Texts(), new MetricHouse(LocalDate.of(2026, 12, 3)));
    }

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
}
