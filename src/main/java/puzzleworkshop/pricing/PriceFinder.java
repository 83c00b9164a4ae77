package puzzleworkshop.pricing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.pricing.cost.CostLine;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.pricing.cost.CostSheet;
import puzzleworkshop.pricing.cost.CostUnit;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.pricing.rates.ListPrice;
import puzzleworkshop.pricing.rates.PriceRule;
import puzzleworkshop.pricing.rates.RateKind;
import puzzleworkshop.pricing.rates.RateSet;
import puzzleworkshop.pricing.rates.Source;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.tax.VatRate;
import puzzleworkshop.pricing.tax.VatSum;

/**
 * From what an order costs to make to what it is sold for: the rule's price, the rush surcharge, a price point, the
 * discount, shipping, tax, fees, and what remains.
 */
final class PriceFinder {

    /** Differences of divisions at sixteen digits, far below any minor unit. */
    private static final BigDecimal HAIR = new BigDecimal("0.000000001");

    private final PriceQuestion question;
    private final CostSheet making;
    private final RateSet rates;
    private final PriceRule rule;
    private final List<ListPrice> list;
    private final List<Sentence> remarks = new ArrayList<>();

    PriceFinder(PriceQuestion question, CostSheet making, RateSet rates, PriceRule rule, List<ListPrice> list) {
        this.question = question;
        this.making = making;
        this.rates = rates;
        this.rule = rule;
        this.list = list;
    }

    PriceAnswer answer() {
        Money unit = unitPrice();
        Sold sold = sold(unit, question.discount());
        Percent before = sold(unit, Percent.ZERO).margin();
        boolean underFloor = sold.margin().compareTo(rule.floorMargin()) < 0;
        if (underFloor) {
            remarks.add(Sentence.of("pricing.remark.under-floor", tenths(sold.margin()), tenths(rule.floorMargin())));
        }
        return new PriceAnswer(
                rates.day(),
                sold.costs(),
                unit,
                sold.goods(),
                sold.discount(),
                sold.shipping(),
                puzzlesVat(),
                shippingVat(),
                sold.vat(),
                sold.earns(),
                sold.margin(),
                before,
                Percent.share(sold.earns(), sold.costs().total()),
                underFloor,
                remarks);
    }

    /** What comes of a unit price: everything after it follows by arithmetic. */
    private record Sold(
            CostSheet costs, Money goods, Money discount, Money shipping, VatSum vat, Money earns, Percent margin) {}

    private Sold sold(Money unit, Percent off) {
        Money goods = unit.times(question.quantity());
        Money discount = goods.times(off).rounded();
        Money shipping = said(question.shippingCharge(), shippingVat()).rounded();
        List<VatSum.Said> lines = new ArrayList<>();
        lines.add(new VatSum.Said(goods, puzzlesVat()));
        if (!discount.isZero()) {
            lines.add(new VatSum.Said(discount.negated(), puzzlesVat()));
        }
        if (!shipping.isZero()) {
            lines.add(new VatSum.Said(shipping, shippingVat()));
        }
        VatSum vat = VatSum.of(lines, rule.vatMode(), rule.vatRounding(), rates.currency());
        CostSheet costs = making.with(feesAndPostage(vat.gross()));
        Money earns = vat.net().minus(costs.total().rounded());
        Money goodsNet = vat.net().minus(shippingNet(shipping));
        Percent margin = Percent.share(vat.net().minus(costs.total()), goodsNet);
        return new Sold(costs, goods, discount, shipping, vat, earns, margin);
    }

    private List<CostLine> feesAndPostage(Money gross) {
        List<CostLine> lines = new ArrayList<>();
        if (rates.money(RateKind.FEE_FIXED).isPositive()) {
            lines.add(CostLine.of(
                    CostPart.FEES,
                    Sentence.of("pricing.line.fee-fixed"),
                    BigDecimal.ONE,
                    CostUnit.ORDER,
                    rates.money(RateKind.FEE_FIXED),
                    rates.source(RateKind.FEE_FIXED)));
        }
        Percent share = rates.percent(RateKind.FEE_SHARE);
        if (share.hundredths().signum() > 0) {
            lines.add(CostLine.of(
                    CostPart.FEES,
                    Sentence.of("pricing.line.fee-share"),
                    share.fraction(),
                    CostUnit.SHARE,
                    gross,
                    rates.source(RateKind.FEE_SHARE)));
        }
        if (question.postage().isPositive()) {
            lines.add(CostLine.of(
                    CostPart.FEES,
                    Sentence.of("pricing.line.postage"),
                    BigDecimal.ONE,
                    CostUnit.ORDER,
                    question.postage(),
                    Source.of(rates.day(), "pricing.source.delivery")));
        }
        return lines;
    }

    private Money unitPrice() {
        Optional<Money> listed = rule.method() == PriceRule.Method.LIST
                ? ListPrice.find(list, question.finished(), question.pieces()).map(ListPrice::price)
                : Optional.empty();
        if (rule.method() == PriceRule.Method.LIST && listed.isEmpty()) {
            remarks.add(Sentence.of("pricing.remark.not-listed"));
        }
        Money exact = listed.orElseGet(() -> said(netOfRule(), puzzlesVat()).dividedBy(question.quantity()));
        Money withRush = question.rush() ? exact.plus(exact.times(rule.rush())) : exact;
        if (listed.isPresent()) {
            return withRush.rounded();
        }
        Money point = rule.points().atOrAbove(withRush);
        // Rounding of tax can cost a minor unit of margin right at a price point; then the next one is taken.
        while (!keepsRule(point)) {
            point = rule.points().after(point);
        }
        return point;
    }

    /** The net price of the whole order by margin or markup; postage beyond the shipping charge counts as cost. */
    private Money netOfRule() {
        PriceFormula formula = new PriceFormula(
                rates.money(RateKind.FEE_FIXED),
                rates.percent(RateKind.FEE_SHARE),
                puzzlesVat(),
                shippingVat(),
                question.shippingCharge());
        Money cost = costBeforeFees();
        return rule.method() == PriceRule.Method.MARKUP
                ? formula.netForMarkup(cost, rule.markup())
                : formula.netForMargin(cost, rule.margin());
    }

    private Money costBeforeFees() {
        return making.total().plus(question.postage()).minus(question.shippingCharge());
    }

    /** Whether the rule is kept at a price without discount, by exact costs. */
    private boolean keepsRule(Money unit) {
        Sold sold = sold(unit, Percent.ZERO);
        if (rule.method() == PriceRule.Method.MARKUP) {
            Money wanted = costBeforeFees().times(rule.markup());
            Money missing = wanted.minus(sold.vat().net().minus(sold.costs().total()));
            return missing.amount().compareTo(HAIR) <= 0;
        }
        return sold.margin().compareTo(rule.margin()) >= 0;
    }

    /** Remarks are kept with an order, so they carry plain numbers. */
    private static BigDecimal tenths(Percent percent) {
        return percent.hundredths().setScale(1, RoundingMode.HALF_UP);
    }

    /** A net amount as it is said to the customer. */
    private Money said(Money net, Percent rate) {
        return rule.vatMode() == VatMode.INCLUDED ? net.times(BigDecimal.ONE.add(rate.fraction())) : net;
    }

    private Money shippingNet(Money said) {
        return rule.vatMode() == VatMode.INCLUDED
                ? said.minus(VatSum.taxOf(said, shippingVat(), VatMode.INCLUDED))
                : said;
    }

    private Percent puzzlesVat() {
        return rate(question.vat().puzzles());
    }

    private Percent shippingVat() {
        return rate(question.vat().shipping());
    }

    private Percent rate(VatRate chosen) {
        return rule.vatMode() == VatMode.NONE ? Percent.ZERO : chosen.in(rates);
    }
}
