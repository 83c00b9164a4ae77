package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.CheckboxGroup;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.TextField;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.printing.PrintRoom;
import puzzleworkshop.printing.PrintRun;
import puzzleworkshop.printing.RunItem;
import puzzleworkshop.workshop.SignedIn;

/** Books a run as printed: which prints are no good, and why paper is booked when the ledger holds too little. */
class PrintedDialog extends Dialog {

    private final transient PrintRoom room;
    private final transient PrintRun run;
    private final transient Formatter figures;
    private final transient SignedIn signedIn;
    private final transient Runnable changed;
    private final CheckboxGroup<RunItem> bad = new CheckboxGroup<>();
    private final TextField why = new TextField();
    private final TextField although = new TextField();
    private final Note refusal = Note.refusal();

    PrintedDialog(
            PrintRoom room,
            PrintRun run,
            List<String> heldBack,
            Formatter figures,
            SignedIn signedIn,
            Runnable changed) {
        this.room = room;
        this.run = run;
        this.figures = figures;
        this.signedIn = signedIn;
        this.changed = changed;
        setWidth("30rem");
        setHeaderTitle(getTranslation("printing.printed-question"));
        bad.setItems(run.planned());
        bad.setItemLabelGenerator(
                item -> figures.text("printing.item-copy", item.order().number(), item.copy(), item.finished()));
        bad.getThemeNames().add("vertical");
        bad.setAriaLabel(getTranslation("printing.printed-question"));
        bad.addValueChangeListener(event -> why.setVisible(!event.getValue().isEmpty()));
        why.setLabel(getTranslation("printing.why"));
        why.setVisible(false);
        why.setWidthFull();
        although.setLabel(getTranslation("printing.although"));
        although.setVisible(false);
        although.setWidthFull();
        Div body = new Div(new Paragraph(getTranslation("printing.printed-lead")), bad, why, refusal, although);
        body.addClassName("pw-stack");
        heldBack.forEach(why -> {
            Note warning = new Note(Note.Kind.WARN, why);
            body.addComponentAsFirst(warning);
        });
        add(body);
        BookButton book = new BookButton(getTranslation("printing.printed-book"), this::book);
        book.addThemeVariants(ButtonVariant.PRIMARY);
        getFooter().add(new Button(getTranslation("printing.cancel"), event -> close()), book);
    }

    private boolean book() {
        Set<Long> spoiled = bad.getValue().stream().map(RunItem::id).collect(Collectors.toSet());
        Optional<String> reason = Optional.of(although.getValue()).filter(text -> !text.isBlank());
        try {
            // A run is printed once, so two windows that see it confirmed mean one printing.
            room.printed(
                    BookingKey.seen("printed", run.id()), run.id(), spoiled, why.getValue(), reason, signedIn.name());
        } catch (Refused refused) {
            refusal.setText(figures.say(refused));
            refusal.setVisible(true);
            although.setVisible(refused.sentence().key().equals("supplies.not-enough"));
            return false;
        }
        close();
        Feedback.tell(figures.text("printing.booked", run.id()), false);
        changed.run();
        return true;
    }
}
