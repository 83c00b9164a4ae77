package puzzleworkshop.machines;

import java.util.Currency;
import java.util.List;
import puzzleworkshop.measure.Money;

/**
 * What one hour of a machine is made of; the rate itself is counted by the pricing room:
 * (price − residual) / life hours + kW · tariff + yearly upkeep / yearly hours + wear parts (price / life).
 *
 * @param price paid for the machine
 * @param residual what it will still fetch at the end of its life, at most the price
 * @param lifeHours hours of running in its life, above zero
 * @param powerKw drawn from the wall while cutting, extraction and air pump included
 * @param yearlyUpkeep service, cleaning, alignment in a year
 * @param yearlyHours hours it runs in a year, above zero
 * @param wearParts replaced by the hour
 */
public record MachineCosts(
        Money price,
        Money residual,
        double lifeHours,
        double powerKw,
        Money yearlyUpkeep,
        double yearlyHours,
        List<WearPart> wearParts) {

    public MachineCosts {
        wearParts = List.copyOf(wearParts);
        if (price.isNegative() || residual.isNegative() || residual.compareTo(price) > 0 || yearlyUpkeep.isNegative()) {
            throw new IllegalArgumentException("Price and upkeep are zero or more, the residual is at most the price");
        }
        if (!(lifeHours > 0)
                || !(yearlyHours > 0)
                || !(powerKw >= 0)
                || !Double.isFinite(lifeHours + yearlyHours + powerKw)) {
            throw new IllegalArgumentException(
                    "Life and yearly hours must be above zero, the power drawn not negative");
        }
        Currency currency = price.currency();
        boolean mixed = !residual.currency().equals(currency)
                || !yearlyUpkeep.currency().equals(currency)
                || wearParts.stream().anyMatch(part -> !part.price().currency().equals(currency));
        if (mixed) {
            throw new IllegalArgumentException("The costs of one machine are in one currency");
        }
    }

    /** Nothing known yet: a machine that costs nothing but counts 5,000 life hours and 500 hours a year. */
    public static MachineCosts unknown(Currency currency) {
        Money nothing = Money.zero(currency);
        return new MachineCosts(nothing, nothing, 5_000, 0, nothing, 500, List.of());
    }

    public Currency currency() {
        return price.currency();
    }
}
