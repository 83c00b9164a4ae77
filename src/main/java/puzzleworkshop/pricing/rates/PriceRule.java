package puzzleworkshop.pricing.rates;

import java.time.LocalDate;
import java.util.Currency;
import puzzleworkshop.measure.Percent;

/**
 * How a price is made from a cost, from a day on.
 *
 * @param from the first day it holds
 * @param method margin, markup, or the price list
 * @param margin wanted on the net price
 * @param markup wanted on the cost
 * @param floorMargin under which a price is flagged
 * @param rush surcharge on the price for work out of turn
 * @param vatMode whether prices hold tax
 * @param vatRounding where it is rounded
 * @param points price points of the price said for one puzzle
 */
public record PriceRule(
        LocalDate from,
        Method method,
        Percent margin,
        Percent markup,
        Percent floorMargin,
        Percent rush,
        VatMode vatMode,
        VatRounding vatRounding,
        PricePoints points) {

    /** What decides the price of one puzzle. */
    public enum Method {
        MARGIN,
        MARKUP,
        LIST;

        public String textKey() {
            return "pricing.method." + name();
        }
    }

    /** The rule that holds until the workshop sets its own: 40 % margin, prices to the minor unit, no tax. */
    public static PriceRule starting(Currency currency) {
        return new PriceRule(
                LocalDate.of(2000, 1, 1),
                Method.MARGIN,
                Percent.of(40),
                Percent.of(70),
                Percent.of(15),
                Percent.of(20),
                VatMode.NONE,
                VatRounding.BY_TOTAL,
                PricePoints.everyMinorUnit(currency));
    }

    PriceRule from(LocalDate day) {
        return new PriceRule(day, method, margin, markup, floorMargin, rush, vatMode, vatRounding, points);
    }

    public PriceRule withMargin(Percent wanted) {
        return new PriceRule(from, Method.MARGIN, wanted, markup, floorMargin, rush, vatMode, vatRounding, points);
    }

    public PriceRule withVat(VatMode mode, VatRounding rounding) {
        return new PriceRule(from, method, margin, markup, floorMargin, rush, mode, rounding, points);
    }

    public PriceRule withPoints(PricePoints wanted) {
        return new PriceRule(from, method, margin, markup, floorMargin, rush, vatMode, vatRounding, wanted);
    }

    public PriceRule withMethod(Method wanted) {
        return new PriceRule(from, wanted, margin, markup, floorMargin, rush, vatMode, vatRounding, points);
    }
}
