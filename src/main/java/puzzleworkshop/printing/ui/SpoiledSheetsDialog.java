package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextField;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.printing.PrintRoom;
import puzzleworkshop.printing.PrintRun;
import puzzleworkshop.workshop.SignedIn;

/** Sheets that the printer spoiled: a jam, a stripe, a wrong setting. They are booked as waste. */
class SpoiledSheetsDialog extends Dialog {

    SpoiledSheetsDialog(PrintRoom room, PrintRun run, Formatter figures, SignedIn signedIn) {
        setHeaderTitle(getTranslation("printing.spoiled-sheets"));
        IntegerField count = new IntegerField(getTranslation("printing.spoiled-sheets-count"));
        count.setMin(1);
        count.setMax(500);
        count.setValue(1);
        count.setStepButtonsVisible(true);
        TextField why = new TextField(getTranslation("printing.why-sheets"));
        why.setWidthFull();
        Div body = new Div(count, why);
        body.addClassName("pw-stack");
        add(body);
        BookingKey key = BookingKey.fresh();
        BookButton book = new BookButton(getTranslation("printing.spoiled-sheets-book"), () -> {
            int sheets = count.getValue() == null ? 0 : count.getValue();
            boolean booked = Feedback.unlessRefused(
                    figures,
                    Sentence.of("printing.spoiled-sheets-booked", sheets),
                    () -> room.spoiledSheets(key, run.id(), sheets, why.getValue(), signedIn.name()));
            if (booked) {
                close();
            }
            return booked;
        });
        book.addThemeVariants(ButtonVariant.PRIMARY);
        getFooter().add(new Button(getTranslation("printing.cancel"), event -> close()), book);
    }
}
