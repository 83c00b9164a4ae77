package puzzleworkshop.pricing.ui;

import java.math.RoundingMode;
import java.text.NumberFormat;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.cost.CostLine;
import puzzleworkshop.pricing.cost.CostUnit;

/** Puts a cost line into words: 0.074 m² × €9.00, and where that comes from. */
final class CostLabels {

    /** Rates such as ink by the millilitre need more digits than a payable amount. */
    private static final int RATE_DIGITS = 4;

    private final Formatter figures;

    CostLabels(Formatter figures) {
        this.figures = figures;
    }

    /** Empty for a line that only adds up others, or that is counted once. */
    String quantityTimesRate(CostLine line) {
        if (!line.lines().isEmpty() || line.unit() == CostUnit.ORDER) {
            return "";
        }
        String perHour = line.unit() == CostUnit.HOUR ? "/h" : "";
        return quantity(line) + " × " + rate(line.rate()) + perHour;
    }

    String source(CostLine line) {
        String says = figures.say(line.source().says());
        boolean always = line.source().holdsFrom().getYear() <= 2000;
        return always
                ? says
                : figures.text("pricing.bar.since", says, line.source().holdsFrom());
    }

    private String quantity(CostLine line) {
        return switch (line.unit()) {
            case HOUR -> figures.minutes(Minutes.of(line.quantity().doubleValue() * 60));
            case SHARE ->
                figures.number(Percent.ofFraction(line.quantity()).hundredths().doubleValue(), 2) + " %";
            default ->
                figures.number(line.quantity().doubleValue(), 3) + " "
                        + figures.text(line.unit().textKey());
        };
    }

    /** A rate with the digits it needs. */
    static String rate(Money rate) {
        NumberFormat format = NumberFormat.getCurrencyInstance(Texts.LOCALE);
        format.setCurrency(rate.currency());
        int digits = rate.currency().getDefaultFractionDigits();
        format.setMinimumFractionDigits(digits);
        format.setMaximumFractionDigits(Math.max(digits, RATE_DIGITS));
        return format.format(rate.amount().setScale(RATE_DIGITS, RoundingMode.HALF_UP));
    }
}
