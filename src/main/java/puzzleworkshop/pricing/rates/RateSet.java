package puzzleworkshop.pricing.rates;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.Source;
import puzzleworkshop.pricing.cost.MachineHour;

/**
 * All figures as they hold on one day.
 *
 * @param day the day
 * @param currency of the money among them
 * @param rates one for each kind
 */
public record RateSet(LocalDate day, Currency currency, Map<RateKind, HeldRate> rates) {

    public RateSet {
        Map<RateKind, HeldRate> all = new EnumMap<>(RateKind.class);
        for (RateKind kind : RateKind.values()) {
            all.put(kind, rates.getOrDefault(kind, HeldRate.starting(kind)));
        }
        rates = Map.copyOf(all);
    }

    /** The starting values alone. */
    public static RateSet starting(LocalDate day, Currency currency) {
        return new RateSet(day, currency, Map.of());
    }

    public HeldRate held(RateKind kind) {
        return rates.get(kind);
    }

    public BigDecimal number(RateKind kind) {
        return held(kind).value();
    }

    public Money money(RateKind kind) {
        return Money.of(number(kind), currency);
    }

    public Percent percent(RateKind kind) {
        return new Percent(number(kind));
    }

    public Source source(RateKind kind) {
        return held(kind).source();
    }

    /** The same with one figure changed, for trying out. */
    public RateSet with(RateKind kind, BigDecimal value) {
        Map<RateKind, HeldRate> changed = new EnumMap<>(rates);
        changed.put(kind, new HeldRate(kind, value, day, "", false));
        return new RateSet(day, currency, changed);
    }

    /** The machine as these figures describe it. */
    public MachineHour machine() {
        return new MachineHour(
                money(RateKind.MACHINE_PRICE),
                money(RateKind.MACHINE_RESIDUAL),
                number(RateKind.MACHINE_LIFE_HOURS),
                number(RateKind.MACHINE_KILOWATTS),
                money(RateKind.ENERGY_TARIFF),
                money(RateKind.MACHINE_UPKEEP_YEAR),
                number(RateKind.MACHINE_HOURS_YEAR),
                List.of(
                        new MachineHour.WearPart(
                                RateKind.LENS_PRICE.textKey(),
                                money(RateKind.LENS_PRICE),
                                number(RateKind.LENS_LIFE_HOURS)),
                        new MachineHour.WearPart(
                                RateKind.FILTER_PRICE.textKey(),
                                money(RateKind.FILTER_PRICE),
                                number(RateKind.FILTER_LIFE_HOURS))));
    }
}
