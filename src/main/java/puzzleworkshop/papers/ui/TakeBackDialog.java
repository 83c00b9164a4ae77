package puzzleworkshop.papers.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.TextField;
import java.util.function.Consumer;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.payments.Payment;

/** Asks why a line of money was wrong before it is undone. */
class TakeBackDialog extends Dialog {

    TakeBackDialog(Formatter figures, Payment wrong, Consumer<String> takeBack, Runnable changed) {
        setHeaderTitle(figures.text("papers.take-back"));
        setWidth("min(26rem, 94vw)");
        TextField why = new TextField(figures.text("papers.take-back.reason"));
        why.setAutofocus(true);
        Div fields = new Div(
                new Paragraph(figures.text(
                        "papers.take-back.lead",
                        figures.text(wrong.kind().textKey()),
                        wrong.amount(),
                        figures.day(wrong.paidOn()))),
                why);
        fields.addClassName("pw-stack");
        add(fields);
        BookButton book = new BookButton(figures.text("papers.take-back.do"), () -> {
            why.setErrorMessage(figures.text("payments.take-back.why"));
            why.setInvalid(why.getValue().isBlank());
            boolean done = !why.isInvalid()
                    && Feedback.unlessRefused(
                            figures, "papers.take-back.done-words", () -> takeBack.accept(why.getValue()));
            if (done) {
                close();
                changed.run();
            }
            return done;
        });
        book.addThemeVariants(ButtonVariant.PRIMARY);
        getFooter().add(new Button(figures.text("papers.dialog.cancel"), event -> close()), book);
    }
}
