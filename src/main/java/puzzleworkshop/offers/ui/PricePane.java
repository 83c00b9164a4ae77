package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.math.BigDecimal;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.ui.fields.FieldError;
import puzzleworkshop.pricing.PriceAnswer;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.pricing.rates.RateSet;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.tax.VatRate;
import puzzleworkshop.pricing.tax.VatRates;
import puzzleworkshop.pricing.ui.PriceBar;
import puzzleworkshop.workshop.Workshop;

/** The price, built up from its parts, and what it earns. */
class PricePane extends Div {

    private static final BigDecimal MOST_DISCOUNT = BigDecimal.valueOf(90);
    private static final BigDecimal MOST_SHIPPING = BigDecimal.valueOf(100_000);
    private static final int PERCENT_DIGITS = 2;

    private final transient Workshop workshop;
    private final transient Formatter figures;
    private final FieldError none;
    private final PriceBar bar;
    private final AmountField discount;
    private final AmountField shipping;
    private final Select<VatRate> puzzlesVat = new Select<>();
    private final Select<VatRate> shippingVat = new Select<>();
    private final Div total = new Div();
    private final boolean seesCosts;

    /** @param seesCosts only an owner sees what an order costs and earns, and gives a discount */
    PricePane(Workshop workshop, RateBook book, Formatter figures, boolean seesCosts, Runnable changed) {
        this.seesCosts = seesCosts;
        this.workshop = workshop;
        this.figures = figures;
        addClassName("pw-section");
        none = new FieldError(Offer.Question.PRICE, figures);
        bar = new PriceBar(figures);
        discount = new AmountField(
                        getTranslation("offers.new.discount"), BigDecimal.ZERO, MOST_DISCOUNT, PERCENT_DIGITS)
                .in("%")
                .saying(Sentence.of("offers.new.discount.range", MOST_DISCOUNT, PERCENT_DIGITS));
        discount.setVisible(seesCosts);
        int digits = workshop.currency().getDefaultFractionDigits();
        shipping = new AmountField(getTranslation("offers.new.shipping"), BigDecimal.ZERO, MOST_SHIPPING, digits)
                .in(workshop.currency().getCurrencyCode())
                .saying(Sentence.of("offers.new.shipping.range", MOST_SHIPPING, digits));
        for (AmountField field : new AmountField[] {discount, shipping}) {
            field.setValueChangeMode(ValueChangeMode.LAZY);
            field.addValueChangeListener(event -> changed.run());
        }
        total.addClassName("neworder-total");
        RateSet rates = book.on(book.today());
        boolean taxed = book.vatMode(book.today()) != VatMode.NONE;
        vat(puzzlesVat, "offers.new.vat.puzzles", rates, taxed, changed);
        vat(shippingVat, "offers.new.vat.shipping", rates, taxed, changed);
        Div fields = new Div(discount, shipping, puzzlesVat, shippingVat);
        fields.addClassName("pw-form");
        add(new H2(getTranslation("offers.new.price")), none, bar, fields);
    }

    private void vat(Select<VatRate> select, String key, RateSet rates, boolean taxed, Runnable changed) {
        select.setLabel(getTranslation(key));
        select.setItems(VatRate.values());
        select.setItemLabelGenerator(rate -> figures.percent(rate.in(rates)) + " · " + getTranslation(rate.textKey()));
        select.setValue(VatRate.STANDARD);
        select.setVisible(taxed);
        select.addValueChangeListener(event -> changed.run());
    }

    /** What was agreed in an order that is changed. */
    void take(PriceQuestion agreed) {
        discount.setValue(
                agreed.discount().hundredths().signum() == 0
                        ? null
                        : agreed.discount().hundredths());
        shipping.setValue(
                agreed.shippingCharge().isZero()
                        ? null
                        : agreed.shippingCharge().amount());
        puzzlesVat.setValue(agreed.vat().puzzles());
        shippingVat.setValue(agreed.vat().shipping());
    }

    VatRates vat() {
        return new VatRates(puzzlesVat.getValue(), shippingVat.getValue());
    }

    /** The amount to pay, for the foot of the page. */
    Div total() {
        return total;
    }

    /** Whether both amounts can be read; marks the one that cannot. What cannot be read is never taken for nothing. */
    boolean check() {
        return discount.isFit() & shipping.isFit();
    }

    Percent discount() {
        return discount.getValue() == null ? Percent.ZERO : new Percent(discount.getValue());
    }

    Money shipping() {
        BigDecimal typed = shipping.getValue();
        return Money.of(typed == null ? BigDecimal.ZERO : typed, workshop.currency())
                .rounded();
    }

    void clearAnswer() {
        bar.setVisible(false);
        none.say("");
        total.removeAll();
        total.add(new Span("–"));
    }

    void show(Offer offer) {
        none.show(offer);
        total.removeAll();
        bar.setVisible(seesCosts && offer.price().isPresent());
        offer.price().ifPresent(kept -> show(kept.answer(), offer.wish().quantity()));
        if (offer.price().isEmpty()) {
            total.add(new Span("–"));
        }
    }

    private void show(PriceAnswer answer, int quantity) {
        if (seesCosts) {
            bar.show(answer);
        }
        Span amount = new Span(figures.money(answer.toPay()));
        amount.addClassName("pw-big-number");
        amount.setId("price");
        total.add(amount);
        if (quantity > 1) {
            Span each = new Span(figures.text("offers.new.each", quantity, answer.unitPrice()));
            each.addClassName("pw-small");
            total.add(each);
        }
    }
}
