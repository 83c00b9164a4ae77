package puzzleworkshop.measure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.stream.IntStream;

/**
 * An amount in one ISO 4217 currency. The amount may carry more digits than the currency's minor unit while costs
 * are built up; {@link #rounded()} brings it to what can be paid. Money of different currencies never mixes.
 *
 * @param amount in major units, exact
 * @param currency ISO 4217
 */
public record Money(BigDecimal amount, Currency currency) implements Comparable<Money> {

    /** Digits kept in intermediate divisions: far below any minor unit. */
    public static final MathContext PRECISE = MathContext.DECIMAL64;

    public static Money of(String amount, String currencyCode) {
        return new Money(new BigDecimal(amount), Currency.getInstance(currencyCode));
    }

    public static Money of(BigDecimal amount, Currency currency) {
        return new Money(amount, currency);
    }

    public static Money zero(Currency currency) {
        return new Money(BigDecimal.ZERO, currency);
    }

    public static Money ofMinor(long minorUnits, Currency currency) {
        return new Money(BigDecimal.valueOf(minorUnits, currency.getDefaultFractionDigits()), currency);
    }

    /** The sum of all; zero in the given currency when there are none. */
    public static Money sum(Iterable<Money> amounts, Currency currency) {
        Money total = zero(currency);
        for (Money amount : amounts) {
            total = total.plus(amount);
        }
        return total;
    }

    public Money plus(Money other) {
        requireSameCurrency(other);
        return new Money(amount.add(other.amount), currency);
    }

    public Money minus(Money other) {
        requireSameCurrency(other);
        return new Money(amount.subtract(other.amount), currency);
    }

    public Money negated() {
        return new Money(amount.negate(), currency);
    }

    public Money times(BigDecimal factor) {
        return new Money(amount.multiply(factor), currency);
    }

    public Money times(long factor) {
        return times(BigDecimal.valueOf(factor));
    }

    /** For measured factors (areas, minutes) that are doubles by nature. */
    public Money times(double factor) {
        return new Money(amount.multiply(BigDecimal.valueOf(factor), PRECISE), currency);
    }

    public Money times(Percent share) {
        return times(share.fraction());
    }

    public Money dividedBy(BigDecimal divisor) {
        return new Money(amount.divide(divisor, PRECISE), currency);
    }

    public Money dividedBy(long divisor) {
        return dividedBy(BigDecimal.valueOf(divisor));
    }

    /** To the currency's minor unit, half up, as invoices are commonly rounded. */
    public Money rounded() {
        return rounded(RoundingMode.HALF_UP);
    }

    public Money rounded(RoundingMode mode) {
        return new Money(amount.setScale(currency.getDefaultFractionDigits(), mode), currency);
    }

    /**
     * Splits this rounded amount by weights so that the parts are payable and add up to it exactly: the largest
     * remainder method (Hamilton's). Ties go to the earlier part.
     *
     * @param weights not negative, at least one above zero
     */
    public List<Money> allocate(List<BigDecimal> weights) {
        BigDecimal total = weights.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
        if (total.signum() <= 0 || weights.stream().anyMatch(w -> w.signum() < 0)) {
            throw new IllegalArgumentException("Weights must not be negative and at least one must be above zero");
        }
        int digits = currency.getDefaultFractionDigits();
        BigDecimal whole = rounded().amount;
        BigDecimal unit = BigDecimal.ONE.movePointLeft(digits);
        List<BigDecimal> parts = new ArrayList<>();
        List<BigDecimal> remainders = new ArrayList<>();
        for (BigDecimal weight : weights) {
            BigDecimal exact = whole.multiply(weight).divide(total, digits + 20, RoundingMode.HALF_UP);
            BigDecimal floor = exact.setScale(digits, RoundingMode.FLOOR);
            parts.add(floor);
            remainders.add(exact.subtract(floor));
        }
        int left = whole.subtract(parts.stream().reduce(BigDecimal.ZERO, BigDecimal::add))
                .divide(unit, 0, RoundingMode.HALF_UP)
                .intValueExact();
        IntStream.range(0, parts.size())
                .boxed()
                .sorted(Comparator.comparing((Integer i) -> remainders.get(i)).reversed())
                .limit(left)
                .forEach(i -> parts.set(i, parts.get(i).add(unit)));
        return parts.stream().map(part -> new Money(part, currency)).toList();
    }

    public boolean isZero() {
        return amount.signum() == 0;
    }

    public boolean isNegative() {
        return amount.signum() < 0;
    }

    public boolean isPositive() {
        return amount.signum() > 0;
    }

    /** Same currency and same value, whatever the number of trailing zeros. */
    public boolean sameAs(Money other) {
        return currency.equals(other.currency) && amount.compareTo(other.amount) == 0;
    }

    void requireSameCurrency(Money other) {
        if (!currency.equals(other.currency)) {
            throw new IllegalArgumentException("Cannot mix " + currency + " and " + other.currency);
        }
    }

    @Override
    public int compareTo(Money other) {
        requireSameCurrency(other);
        return amount.compareTo(other.amount);
    }
}
