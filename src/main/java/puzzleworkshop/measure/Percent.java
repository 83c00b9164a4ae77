package puzzleworkshop.measure;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * A share in hundredths, exact: {@code Percent.of("7.5")} is 0.075. May be negative (a loss) or above 100.
 *
 * @param hundredths 7.5 for 7.5 %
 */
public record Percent(BigDecimal hundredths) implements Comparable<Percent> {

    public static final Percent ZERO = new Percent(BigDecimal.ZERO);
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    public Percent {
        hundredths = hundredths.signum() == 0 ? BigDecimal.ZERO : hundredths.stripTrailingZeros();
    }

    public static Percent of(String hundredths) {
        return new Percent(new BigDecimal(hundredths));
    }

    public static Percent of(long hundredths) {
        return new Percent(BigDecimal.valueOf(hundredths));
    }

    /** From a fraction, 0.075 for 7.5 %. */
    public static Percent ofFraction(BigDecimal fraction) {
        return new Percent(fraction.multiply(HUNDRED));
    }

    /** One amount as a share of another, to eight digits; zero when the whole is zero. */
    public static Percent share(Money part, Money whole) {
        if (whole.isZero()) {
            return ZERO;
        }
        part.requireSameCurrency(whole);
        return ofFraction(part.amount().divide(whole.amount(), new MathContext(10, RoundingMode.HALF_UP)));
    }

    /** As a fraction: 0.075 for 7.5 %. */
    public BigDecimal fraction() {
        return hundredths.movePointLeft(2);
    }

    public double asDouble() {
        return fraction().doubleValue();
    }

    public Percent plus(Percent other) {
        return new Percent(hundredths.add(other.hundredths));
    }

    public Percent minus(Percent other) {
        return new Percent(hundredths.subtract(other.hundredths));
    }

    public boolean isNegative() {
        return hundredths.signum() < 0;
    }

    @Override
    public int compareTo(Percent other) {
        return hundredths.compareTo(other.hundredths);
    }
}
