package puzzleworkshop.pricing.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.IntegerField;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.pricing.CheckedListPrice;
import puzzleworkshop.pricing.PriceAnswer;
import puzzleworkshop.pricing.Pricing;
import puzzleworkshop.pricing.rates.ListPrice;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.workshop.SignedIn;

/** The price list by size and pieces, each line checked against what such a puzzle costs. */
class PriceListForm extends Div {

    private final transient Pricing pricing;
    private final transient RateBook book;
    private final transient Formatter figures;
    private final transient SignedIn signedIn;
    private final Div rows = new Div();
    private final transient List<Row> typed = new ArrayList<>();

    PriceListForm(Pricing pricing, RateBook book, Formatter figures, SignedIn signedIn) {
        this.pricing = pricing;
        this.book = book;
        this.figures = figures;
        this.signedIn = signedIn;
        addClassName("pw-section");
        rows.addClassName("pricing-list");
        Button more = new Button(getTranslation("pricing.list.add"), event -> add(new Row(null)));
        Button save = new Button(getTranslation("pricing.list.save"), event -> save());
        save.addThemeVariants(ButtonVariant.PRIMARY);
        Div buttons = new Div(more, save);
        buttons.addClassName("pw-row");
        add(new H2(getTranslation("pricing.list")), new Paragraph(getTranslation("pricing.list.lead")), rows, buttons);
        refresh();
    }

    /** Reads the list again and checks it by the rates as they are now. */
    final void refresh() {
        typed.clear();
        rows.removeAll();
        List<CheckedListPrice> list = pricing.checkedList();
        list.forEach(line -> add(new Row(line)));
        if (list.isEmpty()) {
            Paragraph empty = new Paragraph(getTranslation("pricing.list.empty"));
            empty.addClassName("pw-soft");
            rows.add(empty);
        }
    }

    private void add(Row row) {
        if (typed.isEmpty()) {
            rows.removeAll();
        }
        typed.add(row);
        rows.add(row.box);
    }

    private void save() {
        boolean complete = true;
        for (Row row : typed) {
            complete &= row.isComplete();
        }
        if (complete
                && Feedback.unlessRefused(
                        figures,
                        "pricing.saved",
                        () -> book.setList(
                                book.today(), typed.stream().map(Row::line).toList(), signedIn.name()))) {
            refresh();
        }
    }

    /** One line of the list as fields, with its verdict. */
    private final class Row {

        private final Div box = new Div();
        private final LengthField longer = new LengthField(getTranslation("pricing.list.longer"), figures.units());
        private final LengthField shorter = new LengthField(getTranslation("pricing.list.shorter"), figures.units());
        private final IntegerField pieces = new IntegerField(getTranslation("pricing.list.pieces"));
        private final AmountField price = AmountField.money(getTranslation("pricing.list.price"), book.currency())
                .signed(book.currency());

        private Row(CheckedListPrice line) {
            box.addClassName("pricing-list-row");
            pieces.setMin(1);
            if (line != null) {
                longer.setValue(line.line().longer());
                shorter.setValue(line.line().shorter());
                pieces.setValue(line.line().pieces());
                price.setValue(line.line().price().rounded().amount());
            }
            Button remove = new Button(getTranslation("pricing.list.remove"), event -> {
                typed.remove(this);
                rows.remove(box);
            });
            remove.addThemeVariants(ButtonVariant.TERTIARY);
            box.add(longer, shorter, pieces, price, line == null ? new Span() : verdict(line.answer()), remove);
        }

        private Div verdict(PriceAnswer answer) {
            Verdict.Kind kind = answer.earns().isNegative()
                    ? Verdict.Kind.BAD
                    : answer.underFloor() ? Verdict.Kind.WARN : Verdict.Kind.GOOD;
            String word = getTranslation(
                    switch (kind) {
                        case BAD -> "pricing.list.below-cost";
                        case WARN -> "pricing.list.under-floor";
                        default -> "pricing.list.earns";
                    });
            Span how = new Span(figures.text("pricing.list.how", answer.cost(), answer.earns(), answer.margin()));
            how.addClassName("pw-small");
            Div verdict = new Div(new Verdict(kind, word), how);
            verdict.addClassName("pricing-list-verdict");
            return verdict;
        }

        private boolean isComplete() {
            boolean sides = longer.getValue() != null && shorter.getValue() != null;
            longer.setInvalid(longer.getValue() == null);
            shorter.setInvalid(shorter.getValue() == null);
            boolean count = pieces.getValue() != null && pieces.getValue() >= 1;
            pieces.setInvalid(!count);
            return price.isFilled() && sides && count;
        }

        /** The two sides may be typed either way round. */
        private ListPrice line() {
            Length a = longer.getValue();
            Length b = shorter.getValue();
            boolean inOrder = a.compareTo(b) >= 0;
            Money said = Money.of(price.getValue(), book.currency());
            return new ListPrice(inOrder ? a : b, inOrder ? b : a, pieces.getValue(), said.rounded());
        }
    }
}
