package puzzleworkshop.papers.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextField;
import java.time.LocalDate;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.display.fields.DayField;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.papers.FarOff;
import puzzleworkshop.payments.Payment;

/** Asks for an amount, its day, its way and a word about it; an amount that is probably mistyped is asked about. */
class AmountDialog extends Dialog {

    /** What the amount is for. */
    enum What {
        RECEIVE,
        REFUND
    }

    /** What was typed. */
    record Entry(Money amount, Payment.Way way, LocalDate day, String note) {}

    /** Books what was typed; sure when an unlikely amount was confirmed. */
    interface Book {
        void book(Entry entry, boolean sure);
    }

    private final transient Formatter figures;
    private final String key;
    private final transient Money suggested;
    private final transient Book book;
    private final transient Runnable changed;
    private final AmountField amount;
    private final Select<Payment.Way> way = new Select<>();
    private final DayField day;
    private final TextField note = new TextField();
    private final Paragraph question = new Paragraph();
    private final BookButton allTheSame;

    AmountDialog(Formatter figures, LocalDate today, What what, Money suggested, Book book, Runnable changed) {
        this.figures = figures;
        this.key = "papers.dialog." + what.name();
        this.suggested = suggested;
        this.book = book;
        this.changed = changed;
        setHeaderTitle(figures.text(key));
        setWidth("min(24rem, 94vw)");
        amount = AmountField.money(figures.text("papers.dialog.amount"), suggested.currency())
                .signed(suggested.currency());
        amount.setValue(suggested.rounded().amount());
        amount.setAutofocus(true);
        way.setLabel(figures.text("papers.dialog.way"));
        way.setItems(Payment.Way.values());
        way.setItemLabelGenerator(item -> figures.text(item.textKey()));
        way.setValue(Payment.Way.TRANSFER);
        day = new DayField(figures.text("papers.dialog.day"));
        day.setValue(today);
        note.setLabel(figures.text("papers.dialog.note"));
        question.addClassName("papers-question");
        question.getElement().setAttribute("role", "alert");
        Div fields = new Div(amount, way, day, note, question);
        fields.addClassName("pw-stack");
        add(fields);
        BookButton save = new BookButton(figures.text("papers.dialog.book"), () -> book(false));
        save.addThemeVariants(ButtonVariant.PRIMARY);
        allTheSame = new BookButton(figures.text("papers.dialog.sure"), () -> book(true));
        allTheSame.addThemeVariants(ButtonVariant.ERROR);
        ask("");
        amount.addValueChangeListener(typed -> ask(""));
        getFooter().add(new Button(figures.text("papers.dialog.cancel"), event -> close()), allTheSame, save);
    }

    private void ask(String words) {
        question.setText(words);
        question.setVisible(!words.isEmpty());
        allTheSame.setVisible(!words.isEmpty());
    }

    private boolean book(boolean sure) {
        boolean positive = amount.isFilled();
        if (positive && amount.getValue().signum() == 0) {
            positive = false;
            amount.setErrorMessage(figures.text("payments.positive"));
            amount.setInvalid(true);
        }
        if (day.getValue() == null) {
            day.refuse();
        }
        if (!positive || day.getValue() == null) {
            return false;
        }
        Money typed = Money.of(amount.getValue(), suggested.currency());
        try {
            book.book(new Entry(typed, way.getValue(), day.getValue(), note.getValue()), sure);
        } catch (FarOff unlikely) {
            ask(figures.say(unlikely));
            return false;
        } catch (Refused refused) {
            Feedback.tell(figures.say(refused), true);
            return false;
        }
        Feedback.tell(figures.text(key + ".done"), false);
        close();
        changed.run();
        return true;
    }
}
