package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.radiobutton.RadioButtonGroup;
import com.vaadin.flow.component.textfield.TextField;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.printing.PrintRoom;
import puzzleworkshop.printing.PrintRun;
import puzzleworkshop.printing.RunItem;
import puzzleworkshop.workshop.SignedIn;

/** A print that turned out to be no good waits for the printer again, alone. */
class SpoiledPrintDialog extends Dialog {

    SpoiledPrintDialog(PrintRoom room, PrintRun run, Formatter figures, SignedIn signedIn, Runnable changed) {
        setWidth("30rem");
        setHeaderTitle(getTranslation("printing.spoil-question"));
        RadioButtonGroup<RunItem> which = new RadioButtonGroup<>();
        which.setItems(run.laid().stream()
                .filter(item -> item.outcome() == RunItem.Outcome.PRINTED)
                .toList());
        which.setItemLabelGenerator(
                item -> figures.text("printing.item-copy", item.order().number(), item.copy(), item.finished()));
        which.getThemeNames().add("vertical");
        TextField why = new TextField(getTranslation("printing.why-print"));
        why.setWidthFull();
        Div body = new Div(new Paragraph(getTranslation("printing.spoil-lead")), which, why);
        body.addClassName("pw-stack");
        add(body);
        Button again = new Button(getTranslation("printing.spoil-book"), event -> {
            RunItem item = which.getValue();
            if (item == null) {
                which.setInvalid(true);
                return;
            }
            if (Feedback.unlessRefused(
                    figures,
                    Sentence.of("printing.dropped", item.order().number()),
                    () -> room.spoiled(item.id(), why.getValue(), signedIn.name()))) {
                close();
                changed.run();
            }
        });
        again.addThemeVariants(ButtonVariant.PRIMARY);
        getFooter().add(new Button(getTranslation("printing.cancel"), event -> close()), again);
    }
}
