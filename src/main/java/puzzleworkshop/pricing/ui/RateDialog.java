package puzzleworkshop.pricing.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.UnorderedList;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.util.List;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.DayField;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.pricing.MovedQuote;
import puzzleworkshop.pricing.Pricing;
import puzzleworkshop.pricing.rates.HeldRate;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.pricing.rates.RateSet;
import puzzleworkshop.workshop.SignedIn;

/** Changes one figure from a day on, shows which open quotes would move, and what held before. */
class RateDialog extends Dialog {

    private static final int QUOTES_SHOWN = 6;

    /** As many as the book of rates holds. */
    private static final int DIGITS = 6;

    private final transient HeldRate rate;
    private final transient Pricing pricing;
    private final transient RateBook book;
    private final transient Formatter figures;
    private final AmountField value;
    private final DayField from;
    private final Div moved = new Div();

    RateDialog(HeldRate rate, Pricing pricing, RateBook book, Formatter figures, SignedIn signedIn, Runnable changed) {
        this.rate = rate;
        this.pricing = pricing;
        this.book = book;
        this.figures = figures;
        setHeaderTitle(getTranslation(rate.kind().textKey()));
        setWidth("min(28rem, 94vw)");
        value = new AmountField(getTranslation("pricing.rate.value"), DIGITS);
        value.show(rate.value());
        value.setAutofocus(true);
        value.setValueChangeMode(ValueChangeMode.LAZY);
        value.addValueChangeListener(event -> showMoved());
        from = new DayField(getTranslation("pricing.holds-from"), book.today());
        from.setLocale(Texts.LOCALE);
        TextField note = new TextField(getTranslation("pricing.rate.note"));
        note.setPlaceholder(getTranslation("pricing.rate.note-example"));
        Div fields = new Div(value, from, note, moved, history());
        fields.addClassName("pw-stack");
        moved.addClassName("pw-stack");
        add(fields);
        Button save = new Button(getTranslation("pricing.rate.save"), event -> {
            boolean readable = value.isFilled();
            from.setInvalid(from.getValue() == null);
            if (readable
                    && from.getValue() != null
                    && Feedback.unlessRefused(
                            figures,
                            "pricing.saved",
                            () -> book.set(
                                    rate.kind(),
                                    value.getValue(),
                                    from.getValue(),
                                    note.getValue(),
                                    signedIn.name()))) {
                close();
                changed.run();
            }
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        getFooter().add(new Button(getTranslation("pricing.cancel"), event -> close()), save);
    }

    private void showMoved() {
        moved.removeAll();
        if (value.getValue() == null || !rate.kind().allows(value.getValue())) {
            return;
        }
        try {
            RateSet then = book.on(book.today()).with(rate.kind(), value.getValue());
            List<MovedQuote> quotes = pricing.movedBy(then);
            if (quotes.isEmpty()) {
                return;
            }
            moved.add(new H3(getTranslation("pricing.moved", quotes.size())));
            UnorderedList list = new UnorderedList();
            quotes.stream()
                    .limit(QUOTES_SHOWN)
                    .forEach(quote -> list.add(new ListItem(figures.text(
                            "pricing.moved.one",
                            quote.number(),
                            quote.toPayNow(),
                            quote.toPayThen(),
                            quote.marginThen()))));
            moved.add(list);
        } catch (IllegalArgumentException | Refused notYetPossible) {
            // Half-typed figures may contradict each other (a machine worth more than its price); saving says why.
            moved.removeAll();
        }
    }

    private Div history() {
        Div box = new Div();
        List<HeldRate> held = book.history(rate.kind());
        if (!held.isEmpty()) {
            box.add(new H3(getTranslation("pricing.rate.history")));
            UnorderedList list = new UnorderedList();
            held.forEach(entry -> list.add(new ListItem(figures.text(
                    "pricing.rate.history-line",
                    entry.from(),
                    figures.number(entry.value().doubleValue(), 4),
                    entry.note()))));
            box.add(list);
        } else {
            SmallText none = new SmallText(getTranslation("pricing.rate.starting"));
            box.add(none);
        }
        return box;
    }
}
