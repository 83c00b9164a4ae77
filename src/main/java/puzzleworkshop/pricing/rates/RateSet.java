package puzzleworkshop.pricing.rates;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.machines.MachineCosts;
import puzzleworkshop.measure.Confidential;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;

/**
 * All figures as they hold on one day.
 *
 * @param day the day
 * @param currency of the money among them
 * @param rates one for each kind
 * @param laser what an hour of the standard machine is made of, as it stands at the machine; empty while that is not known
 */
public record RateSet(LocalDate day, Currency currency, Map<RateKind, HeldRate> rates, Optional<MachineCosts> laser)
        implements Confidential<RateSet> {

    public RateSet {
        Map<RateKind, HeldRate> all = new EnumMap<>(RateKind.class);
        for (RateKind kind : RateKind.values()) {
            all.put(kind, rates.getOrDefault(kind, HeldRate.starting(kind)));
        }
        rates = Map.copyOf(all);
    }

    public RateSet(LocalDate day, Currency currency, Map<RateKind, HeldRate> rates) {
        this(day, currency, rates, Optional.empty());
    }

    /** The starting values alone. */
    public static RateSet starting(LocalDate day, Currency currency) {
        return new RateSet(day, currency, Map.of());
    }

    /** The tax rates, which stand on every invoice; of all else the starting values. */
    @Override
    public RateSet withoutMoney() {
        return new RateSet(
                day,
                currency,
                Map.of(RateKind.VAT, held(RateKind.VAT), RateKind.VAT_REDUCED, held(RateKind.VAT_REDUCED)));
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
        return new RateSet(day, currency, changed, laser);
    }

    /** The machine as these figures describe it. */
    public MachineHour machine() {
        return laser.map(this::hourOf).orElseGet(this::startingHour);
    }

    private MachineHour hourOf(MachineCosts costs) {
        return new MachineHour(
                costs.price(),
                costs.residual(),
                BigDecimal.valueOf(costs.lifeHours()),
                BigDecimal.valueOf(costs.powerKw()),
                money(RateKind.ENERGY_TARIFF),
                costs.yearlyUpkeep(),
                BigDecimal.valueOf(costs.yearlyHours()),
                costs.wearParts().stream()
                        .map(part -> new MachineHour.WearPart(
                                part.name(), part.price(), BigDecimal.valueOf(part.lifeHours())))
                        .toList());
    }

    private MachineHour startingHour() {
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
