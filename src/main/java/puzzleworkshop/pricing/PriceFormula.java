package puzzleworkshop.pricing;

import java.math.BigDecimal;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;

/**
 * The net price that leaves what was asked after the payment or platform has taken its fee. The fee is a share of
 * everything the customer pays, tax and shipping included, and that share is itself paid out of the price; so it is
 * solved for, not added.
 *
 * <p>With cost C, fixed fee f, fee share φ, tax v on the price and w on the shipping charged S (net), margin m on the
 * net price: N = (C + f + φ(1+w)S) ÷ (1 − m − φ(1+v)). Derived from N + S − C − S − f − φ((1+v)N + (1+w)S) = m·N; the
 * tests put the price back into that equation.
 *
 * @param fixedFee f, for each payment
 * @param feeShare φ, of the gross amount paid
 * @param vat v; zero when no tax is charged
 * @param shippingVat w; the same as v unless shipping carries a rate of its own
 * @param shipping S, net, charged to the customer beside the price
 */
public record PriceFormula(Money fixedFee, Percent feeShare, Percent vat, Percent shippingVat, Money shipping) {

    /** Net price for a margin on that price. */
    public Money netForMargin(Money cost, Percent margin) {
        BigDecimal left = BigDecimal.ONE.subtract(margin.fraction()).subtract(feeOnNet());
        if (left.signum() <= 0) {
            throw new Refused("pricing.margin-out-of-reach", margin, feeShare);
        }
        return outlays(cost).dividedBy(left);
    }

    /** Net price for a markup on cost: what is earned is cost × markup. */
    public Money netForMarkup(Money cost, Percent markup) {
        BigDecimal left = BigDecimal.ONE.subtract(feeOnNet());
        if (left.signum() <= 0) {
            throw new Refused("pricing.fees-eat-all", feeShare);
        }
        return outlays(cost.plus(cost.times(markup))).dividedBy(left);
    }

    /** The fee on an order sold at this net price. */
    public Money feeAt(Money net) {
        return fixedFee.plus(net.times(feeOnNet())).plus(shipping.times(feeOnShipping()));
    }

    private Money outlays(Money cost) {
        return cost.plus(fixedFee).plus(shipping.times(feeOnShipping()));
    }

    /** φ(1+v): the fee as a share of a net amount. */
    private BigDecimal feeOnNet() {
        return feeShare.fraction().multiply(BigDecimal.ONE.add(vat.fraction()));
    }

    /** φ(1+w). */
    private BigDecimal feeOnShipping() {
        return feeShare.fraction().multiply(BigDecimal.ONE.add(shippingVat.fraction()));
    }
}
