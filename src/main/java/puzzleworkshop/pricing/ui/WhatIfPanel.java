package puzzleworkshop.pricing.ui;

import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.slider.IntegerSlider;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.IntStream;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pricing.PriceAnswer;
import puzzleworkshop.pricing.Pricing;
import puzzleworkshop.pricing.WhatIf;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.pricing.rates.RateKind;

/** Drag margin, passes, rejects and discount, and see what the price and the profit of a usual puzzle would be. */
class WhatIfPanel extends Div {

    private static final int[] STEPS = {1, 2, 5, 10, 25};
    private static final int USUAL_REJECTS = 100;

    private final transient Pricing pricing;
    private final transient RateBook book;
    private final transient Formatter figures;
    private final LengthField width;
    private final LengthField height;
    private final IntegerField pieces = new IntegerField();
    private final IntegerField quantity = new IntegerField();
    private final IntegerSlider margin = new IntegerSlider(0, 80);
    private final IntegerSlider passes = new IntegerSlider(1, 8);
    private final IntegerSlider rejects = new IntegerSlider(0, 500);
    private final IntegerSlider discount = new IntegerSlider(0, 60);
    private final Checkbox rush = new Checkbox();
    private final PriceBar bar;
    private final Div outcome = new Div();
    private final Div steps = new Div();

    WhatIfPanel(Pricing pricing, RateBook book, Formatter figures) {
        this.pricing = pricing;
        this.book = book;
        this.figures = figures;
        this.width = new LengthField(getTranslation("pricing.what-if.width"), figures.units());
        this.height = new LengthField(getTranslation("pricing.what-if.height"), figures.units());
        this.bar = new PriceBar(figures);
        addClassName("pw-section");
        add(new H2(getTranslation("pricing.what-if")), new Paragraph(getTranslation("pricing.what-if.lead")));
        Div answer = new Div(outcome, bar, steps);
        answer.addClassName("pw-stack");
        outcome.addClassName("pricing-outcome");
        steps.addClassName("pricing-steps");
        Div both = new Div(questions(), answer);
        both.addClassName("pricing-what-if");
        add(both);
        margin.setValue(Math.clamp(book.rule(book.today()).margin().hundredths().intValue(), 0, 80));
        passes.setValue(usualPasses());
        rejects.setValue(USUAL_REJECTS);
        discount.setValue(0);
        refresh();
        List.of(margin, passes, rejects, discount).forEach(slider -> slider.addValueChangeListener(e -> refresh()));
        List.of(pieces, quantity).forEach(field -> field.addValueChangeListener(e -> refresh()));
        rush.addValueChangeListener(e -> refresh());
        width.addValueChangeListener(e -> refresh());
        height.addValueChangeListener(e -> refresh());
    }

    private Div questions() {
        width.setValue(Length.mm(300));
        height.setValue(Length.mm(200));
        whole(pieces, "pricing.what-if.pieces", 48, 5000);
        whole(quantity, "pricing.what-if.quantity", 1, 1000);
        Div puzzle = new Div(width, height, pieces, quantity);
        puzzle.addClassName("pricing-puzzle");
        rush.setLabel(getTranslation("pricing.what-if.rush"));
        Div questions = new Div(
                puzzle,
                slider(margin, "pricing.what-if.margin", 1),
                slider(passes, "pricing.what-if.passes", 1),
                slider(rejects, "pricing.what-if.rejects", 10),
                slider(discount, "pricing.what-if.discount", 1),
                rush);
        questions.addClassName("pw-stack");
        return questions;
    }

    private void whole(IntegerField field, String key, int value, int most) {
        field.setLabel(getTranslation(key));
        field.setMin(1);
        field.setMax(most);
        field.setValue(value);
        field.setStepButtonsVisible(true);
        field.setValueChangeMode(ValueChangeMode.LAZY);
    }

    private Div slider(IntegerSlider slider, String key, int step) {
        slider.setStep(step);
        slider.setValueChangeMode(ValueChangeMode.TIMEOUT);
        slider.setValueChangeTimeout(120);
        slider.setWidthFull();
        Span value = new Span();
        value.addClassName("pricing-slider-value");
        slider.addValueChangeListener(event -> value.setText(Integer.toString(event.getValue())));
        value.setText(Integer.toString(slider.getValue()));
        slider.setAriaLabel(getTranslation(key));
        Div name = new Div(new Span(getTranslation(key)), value);
        name.addClassName("pricing-slider-name");
        Div row = new Div(name, slider);
        row.addClassName("pricing-slider");
        return row;
    }

    /** Works everything out again, by the rates as they are now. */
    final void refresh() {
        if (width.getValue() == null || height.getValue() == null || !isWhole(pieces) || !isWhole(quantity)) {
            return;
        }
        if (!width.getValue().isPositive() || !height.getValue().isPositive()) {
            return;
        }
        Size size = new Size(width.getValue(), height.getValue());
        PriceQuestion question = pricing.typical(size, pieces.getValue())
                .withRush(rush.getValue())
                .withDiscount(Percent.of(discount.getValue()));
        WhatIf tried = new WhatIf(
                Optional.of(Percent.of(margin.getValue())),
                passes.getValue() / (double) usualPasses(),
                rejects.getValue() / (double) USUAL_REJECTS);
        outcome.removeAll();
        try {
            int[] quantities = IntStream.concat(IntStream.of(quantity.getValue()), IntStream.of(STEPS))
                    .toArray();
            List<PriceAnswer> answers = pricing.tryOut(question, tried, quantities);
            PriceAnswer answer = answers.getFirst();
            bar.setVisible(true);
            bar.show(answer);
            outcome.add(big("pricing.what-if.each", figures.money(answer.unitPrice())));
            outcome.add(big("pricing.what-if.to-pay", figures.money(answer.toPay())));
            outcome.add(big("pricing.what-if.earns", figures.money(answer.earns())));
            outcome.add(big("pricing.what-if.break-even", breakEven(answer)));
            steps(answers.subList(1, answers.size()));
        } catch (Refused refused) {
            bar.setVisible(false);
            steps.removeAll();
            Note note = new Note(Note.Kind.BAD, figures.say(refused));
            outcome.add(note);
        }
    }

    private void steps(List<PriceAnswer> answers) {
        steps.removeAll();
        steps.add(
                new Span(getTranslation("pricing.steps")),
                new Span(getTranslation("pricing.steps.each")),
                new Span(getTranslation("pricing.steps.costs")),
                new Span(getTranslation("pricing.steps.earns")));
        for (PriceAnswer answer : answers) {
            steps.add(
                    new Span(Integer.toString(answer.costs().quantity())),
                    new Span(figures.money(answer.unitPrice())),
                    new Span(figures.money(answer.costs().each())),
                    new Span(figures.money(answer.earns())));
        }
    }

    private String breakEven(PriceAnswer answer) {
        OptionalLong count = pricing.breakEven(answer);
        return count.isPresent() ? Long.toString(count.getAsLong()) : getTranslation("pricing.what-if.never");
    }

    private Div big(String key, String value) {
        Span number = new Span(value);
        number.addClassName("pricing-outcome-number");
        Span name = new Span(getTranslation(key));
        name.addClassName("pw-small");
        Div figure = new Div(name, number);
        figure.addClassName("pricing-outcome-figure");
        return figure;
    }

    private int usualPasses() {
        return Math.clamp(book.on(book.today()).number(RateKind.CUT_PASSES).intValue(), 1, 8);
    }

    private static boolean isWhole(IntegerField field) {
        return field.getValue() != null && field.getValue() >= 1 && field.getValue() <= field.getMax();
    }
}
