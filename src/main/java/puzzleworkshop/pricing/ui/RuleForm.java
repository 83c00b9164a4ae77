package puzzleworkshop.pricing.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.formlayout.FormLayout;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import java.math.BigDecimal;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.fields.DayField;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.pricing.rates.PricePoints;
import puzzleworkshop.pricing.rates.PriceRule;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.pricing.rates.VatMode;
import puzzleworkshop.pricing.rates.VatRounding;
import puzzleworkshop.workshop.SignedIn;

/** How a price is made from a cost. */
class RuleForm extends Div {

    private static final int MOST_PERCENT = 10_000;
    private static final int POINT_DIGITS = 4;

    private final Select<PriceRule.Method> method = new Select<>();
    private final Select<VatMode> vat = new Select<>();
    private final Select<VatRounding> rounding = new Select<>();
    private final AmountField margin = percent("pricing.rule.margin", 99);
    private final AmountField markup = percent("pricing.rule.markup", MOST_PERCENT);
    private final AmountField floor = percent("pricing.rule.floor", 99);
    private final AmountField rush = percent("pricing.rule.rush", MOST_PERCENT);
    private final AmountField step = new AmountField(getTranslation("pricing.rule.step"), POINT_DIGITS);
    private final AmountField ending = new AmountField(getTranslation("pricing.rule.ending"), POINT_DIGITS);
    private final DayField from = new DayField();

    RuleForm(RateBook book, Formatter figures, SignedIn signedIn, Runnable changed) {
        addClassName("pw-section");
        PriceRule now = book.rule(book.today());
        FormLayout form = new FormLayout();
        form.setAutoResponsive(true);
        form.setAutoRows(true);
        form.setExpandColumns(true);
        form.setExpandFields(true);
        choice(form, method, "pricing.rule.method", now.method(), PriceRule.Method.values(), PriceRule.Method::textKey);
        number(form, margin, now.margin().hundredths());
        number(form, markup, now.markup().hundredths());
        number(form, floor, now.floorMargin().hundredths());
        number(form, rush, now.rush().hundredths());
        choice(form, vat, "pricing.rule.vat", now.vatMode(), VatMode.values(), VatMode::textKey);
        choice(form, rounding, "pricing.rule.rounding", now.vatRounding(), VatRounding.values(), VatRounding::textKey);
        number(form, step, now.points().step());
        number(form, ending, now.points().ending());
        from.setLabel(getTranslation("pricing.holds-from"));
        from.setLocale(Texts.LOCALE);
        from.setValue(book.today());
        form.add(from);
        method.addValueChangeListener(event -> showWhatCounts());
        vat.addValueChangeListener(event -> showWhatCounts());
        showWhatCounts();
        Button save = new Button(getTranslation("pricing.rule.save"), event -> {
            if (complete()
                    && Feedback.unlessRefused(figures, "pricing.saved", () -> book.set(typed(), signedIn.name()))) {
                changed.run();
            }
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        add(new H2(getTranslation("pricing.rule")), new Paragraph(getTranslation("pricing.rule.lead")), form, save);
    }

    private void showWhatCounts() {
        margin.setVisible(method.getValue() != PriceRule.Method.MARKUP);
        markup.setVisible(method.getValue() == PriceRule.Method.MARKUP);
        rounding.setVisible(vat.getValue() != VatMode.NONE);
    }

    private boolean complete() {
        boolean complete = true;
        for (AmountField field : List.of(margin, markup, floor, rush, step, ending)) {
            complete &= field.isFilled();
        }
        from.setInvalid(from.getValue() == null);
        return complete && from.getValue() != null;
    }

    private PriceRule typed() {
        if (step.getValue().signum() <= 0
                || ending.getValue().signum() < 0
                || ending.getValue().compareTo(step.getValue()) >= 0) {
            throw new Refused("pricing.rule.points");
        }
        return new PriceRule(
                from.getValue(),
                method.getValue(),
                new Percent(margin.getValue()),
                new Percent(markup.getValue()),
                new Percent(floor.getValue()),
                new Percent(rush.getValue()),
                vat.getValue(),
                rounding.getValue(),
                new PricePoints(step.getValue(), ending.getValue()));
    }

    private AmountField percent(String key, int most) {
        return AmountField.percent(getTranslation(key), most, POINT_DIGITS);
    }

    private static void number(FormLayout form, AmountField field, BigDecimal value) {
        field.show(value);
        form.add(field);
    }

    private <T> void choice(
            FormLayout form, Select<T> select, String key, T value, T[] values, Function<T, String> textKey) {
        select.setLabel(getTranslation(key));
        select.setItems(Stream.of(values).toList());
        select.setItemLabelGenerator(item -> getTranslation(textKey.apply(item)));
        select.setValue(value);
        form.add(select);
    }
}
