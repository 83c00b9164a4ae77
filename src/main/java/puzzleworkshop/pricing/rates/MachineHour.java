package puzzleworkshop.pricing.rates;

import java.math.BigDecimal;
import java.util.List;
import puzzleworkshop.measure.HourlyRate;
import puzzleworkshop.measure.Money;

/**
 * What an hour of a machine costs: (price − residual) ÷ life hours + kW × tariff + yearly upkeep ÷ yearly hours + wear
 * parts, each price ÷ life hours.
 *
 * <p>Source: machine-hour rate with depreciation by use, cost accounting textbooks; examples in the tests.
 *
 * @param price paid for it
 * @param residual what it will still fetch
 * @param lifeHours hours of cutting until it is worn out, above zero
 * @param kilowatts drawn while it works, with extraction and air
 * @param tariff for a kWh
 * @param yearlyUpkeep cleaning, service, insurance
 * @param yearlyHours hours it cuts in a year, above zero
 * @param wearParts lens, filter, nozzle…
 */
public record MachineHour(
        Money price,
        Money residual,
        BigDecimal lifeHours,
        BigDecimal kilowatts,
        Money tariff,
        Money yearlyUpkeep,
        BigDecimal yearlyHours,
        List<WearPart> wearParts) {

    /** A part that wears: what it costs and how many hours it lasts. */
    public record WearPart(String name, Money price, BigDecimal lifeHours) {

        public Money perHour() {
            return price.dividedBy(lifeHours);
        }
    }

    public MachineHour {
        wearParts = List.copyOf(wearParts);
        if (lifeHours.signum() <= 0 || yearlyHours.signum() <= 0) {
            throw new IllegalArgumentException("Life hours and yearly hours must be above zero");
        }
        if (price.compareTo(residual) < 0) {
            throw new IllegalArgumentException("A machine cannot be worth more at its end than when it was bought");
        }
    }

    public Money depreciationPerHour() {
        return price.minus(residual).dividedBy(lifeHours);
    }

    public Money energyPerHour() {
        return tariff.times(kilowatts);
    }

    public Money upkeepPerHour() {
        return yearlyUpkeep.dividedBy(yearlyHours);
    }

    /** All together. */
    public HourlyRate rate() {
        Money sum = depreciationPerHour().plus(energyPerHour()).plus(upkeepPerHour());
        for (WearPart part : wearParts) {
            sum = sum.plus(part.perHour());
        }
        return HourlyRate.of(sum);
    }
}
