package puzzleworkshop.pricing;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import puzzleworkshop.measure.Confidential;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.pricing.cost.CostSheet;
import puzzleworkshop.pricing.tax.VatSum;

/**
 * A price and where it comes from. All amounts but the cost sheet are payable, and add up: goods − discount + shipping
 * said to the customer give {@code toPay}'s net or gross; net + vat = toPay.
 *
 * @param day on which the rates hold
 * @param costs everything the order costs, fees and postage included
 * @param unitPrice said for one puzzle (with tax when prices include it), rush in it, discount not
 * @param goods unit price × quantity
 * @param discount taken off the goods, not below zero
 * @param shipping said to the customer beside the goods
 * @param puzzlesVat tax rate of goods and discount, zero when no tax is charged
 * @param shippingVat tax rate of the shipping, zero when no tax is charged
 * @param vat net, tax and gross of the whole
 * @param earns net − costs, payable
 * @param margin what remains, by exact costs, as a share of the net price of the goods after discount
 * @param marginBeforeDiscount what the margin would be without the discount
 * @param markup earns as a share of the costs
 * @param underFloor whether the margin is under the rule's floor
 * @param remarks what the seller should know
 */
public record PriceAnswer(
        LocalDate day,
        CostSheet costs,
        Money unitPrice,
        Money goods,
        Money discount,
        Money shipping,
        Percent puzzlesVat,
        Percent shippingVat,
        VatSum vat,
        Money earns,
        Percent margin,
        Percent marginBeforeDiscount,
        Percent markup,
        boolean underFloor,
        List<Sentence> remarks)
        implements Confidential<PriceAnswer> {

    public PriceAnswer {
        remarks = List.copyOf(remarks);
        // Prices kept before lines had rates of their own had one rate for all.
        puzzlesVat = puzzlesVat == null ? onlyRate(vat) : puzzlesVat;
        shippingVat = shippingVat == null ? onlyRate(vat) : shippingVat;
    }

    private static Percent onlyRate(VatSum vat) {
        return vat.perRate().isEmpty() ? Percent.ZERO : vat.perRate().getLast().rate();
    }

    public Money net() {
        return vat.net();
    }

    /** What the customer pays. */
    public Money toPay() {
        return vat.gross();
    }

    /** What the customer is told, with the discount in it: no costs, no margin, and not how much was taken off. */
    @Override
    public PriceAnswer withoutMoney() {
        Currency currency = unitPrice.currency();
        Money nothing = Money.zero(currency);
        Money left = goods.minus(discount);
        return new PriceAnswer(
                day,
                new CostSheet(currency, costs.quantity(), List.of()),
                left.dividedBy(BigDecimal.valueOf(costs.quantity())).rounded(),
                left,
                nothing,
                shipping,
                puzzlesVat,
                shippingVat,
                vat,
                nothing,
                Percent.ZERO,
                Percent.ZERO,
                Percent.ZERO,
                false,
                List.of());
    }

    /** What the order costs, payable, the sum of the shown parts. */
    public Money cost() {
        return costs.total().rounded();
    }
}
