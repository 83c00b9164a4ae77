package puzzleworkshop.pricing.tax;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;

/**
 * Net, tax and gross of a few lines with their rates. Net + tax = gross holds to the minor unit for each rate and for
 * the whole. Half up, as published guidance on tax rounding has it.
 *
 * @param perRate one entry for each rate, lowest rate first
 * @param mode how the amounts of the lines were said
 * @param rounding by line or by total
 */
public record VatSum(List<OfRate> perRate, VatMode mode, VatRounding rounding, Currency currency) {

    /** One said amount: gross when tax is included, net otherwise. */
    public record Said(Money amount, Percent rate) {}

    /** What one rate comes to. */
    public record OfRate(Percent rate, Money net, Money vat, Money gross) {

        /** Both together, of the same rate. */
        public OfRate plus(OfRate other) {
            return new OfRate(rate, net.plus(other.net), vat.plus(other.vat), gross.plus(other.gross));
        }

        public OfRate minus(OfRate other) {
            return new OfRate(rate, net.minus(other.net), vat.minus(other.vat), gross.minus(other.gross));
        }
    }

    public VatSum {
        perRate = List.copyOf(perRate);
    }

    public static VatSum of(List<Said> lines, VatMode mode, VatRounding rounding, Currency currency) {
        Map<Percent, List<Money>> byRate = new TreeMap<>();
        for (Said line : lines) {
            Percent rate = mode == VatMode.NONE ? Percent.ZERO : line.rate();
            byRate.computeIfAbsent(rate, r -> new ArrayList<>())
                    .add(line.amount().rounded());
        }
        List<OfRate> perRate = new ArrayList<>();
        byRate.forEach((rate, amounts) -> perRate.add(ofRate(rate, amounts, mode, rounding, currency)));
        return new VatSum(perRate, mode, rounding, currency);
    }

    private static OfRate ofRate(
            Percent rate, List<Money> amounts, VatMode mode, VatRounding rounding, Currency currency) {
        Money said = Money.sum(amounts, currency);
        Money vat = rounding == VatRounding.BY_TOTAL
                ? taxOf(said, rate, mode)
                : Money.sum(
                        amounts.stream()
                                .map(amount -> taxOf(amount, rate, mode))
                                .toList(),
                        currency);
        return switch (mode) {
            case NONE -> new OfRate(rate, said, Money.zero(currency), said);
            case INCLUDED -> new OfRate(rate, said.minus(vat), vat, said);
            case ON_TOP -> new OfRate(rate, said, vat, said.plus(vat));
        };
    }

    /** The tax on one said amount, rounded to the minor unit. */
    public static Money taxOf(Money said, Percent rate, VatMode mode) {
        return switch (mode) {
            case NONE -> Money.zero(said.currency());
            case ON_TOP -> said.times(rate).rounded();
            case INCLUDED ->
                said.times(rate.fraction())
                        .dividedBy(BigDecimal.ONE.add(rate.fraction()))
                        .rounded();
        };
    }

    public Money net() {
        return Money.sum(perRate.stream().map(OfRate::net).toList(), currency);
    }

    public Money vat() {
        return Money.sum(perRate.stream().map(OfRate::vat).toList(), currency);
    }

    public Money gross() {
        return Money.sum(perRate.stream().map(OfRate::gross).toList(), currency);
    }
}
