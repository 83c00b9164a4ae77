package puzzleworkshop.orders;

import puzzleworkshop.measure.Confidential;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.PriceAnswer;

/**
 * What was offered for an order, to the minor unit; it stays when rates change.
 *
 * @param net without tax
 * @param vat tax on top; net and vat add up to the gross price
 * @param cost what it was reckoned to cost, fees included
 */
public record AgreedPrice(Money net, Money vat, Money cost) implements Confidential<AgreedPrice> {

    static AgreedPrice of(PriceAnswer answer) {
        return new AgreedPrice(answer.net(), answer.vat().vat(), answer.cost());
    }

    public Money gross() {
        return net.plus(vat);
    }

    public Money earns() {
        return net.minus(cost);
    }

    /** The price is told to the customer; what it costs is not. */
    @Override
    public AgreedPrice withoutMoney() {
        return new AgreedPrice(net, vat, Money.zero(net.currency()));
    }

    /** What it earns as a share of the net price. */
    public Percent margin() {
        return Percent.share(earns(), net);
    }
}
