package puzzleworkshop.pricing.tax;

import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.rates.RateKind;
import puzzleworkshop.pricing.rates.RateSet;

/** Which of the workshop's tax rates a line of an order carries. How high each is stands in the rates, from a day on. */
public enum VatRate {
    STANDARD,
    REDUCED,
    /** Zero-rated or exempt. */
    ZERO;

    /** How high it is by these rates. */
    public Percent in(RateSet rates) {
        return switch (this) {
            case STANDARD -> rates.percent(RateKind.VAT);
            case REDUCED -> rates.percent(RateKind.VAT_REDUCED);
            case ZERO -> Percent.ZERO;
        };
    }

    public String textKey() {
        return "pricing.vat-rate." + name();
    }
}
