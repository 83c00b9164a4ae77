package puzzleworkshop.letters.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.value.ValueChangeMode;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.RolesAllowed;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.SafeQuestion;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.letters.Draft;
import puzzleworkshop.letters.LetterField;
import puzzleworkshop.letters.LetterKind;
import puzzleworkshop.letters.Letters;
import puzzleworkshop.letters.Wording;
import puzzleworkshop.letters.Wordings;
import puzzleworkshop.letters.mail.MailAccounts;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderFilter;
import puzzleworkshop.orders.Orders;

/** The wording of each kind of letter with a real order beside it, when reminders are due, and the mail server. */
@Route("set-up/letters")
@RolesAllowed("OWNER")
@StyleSheet("context://letters.css")
public class LettersView extends Div implements HasDynamicTitle {

    private static final int ORDERS = 40;

    private final transient Letters letters;
    private final transient Wordings wordings;
    private final transient Formatter figures;
    private final Select<LetterKind> kind = new Select<>();
    private final TextField subject = new TextField();
    private final TextArea body = new TextArea();
    private final Div fields = new Div();
    private final Note complaint = Note.refusal();
    private final Select<Order> order = new Select<>();
    private final Div preview = new Div();
    /** As it is kept, or stood when it was opened. */
    private transient Wording shown;

    public LettersView(Letters letters, Wordings wordings, MailAccounts accounts, Orders orders, Formatter figures) {
        this.letters = letters;
        this.wordings = wordings;
        this.figures = figures;
        addClassName("pw-page");
        PageHead head = new PageHead(
                getTranslation("letters.view"),
                new Paragraph(getTranslation("letters.view.lead")),
                new Anchor("set-up", getTranslation("letters.view.back")));
        add(head, wording(orders), new ReminderForm(wordings, figures), new MailAccountForm(accounts, figures));
        kind.setValue(LetterKind.QUOTE);
    }

    @Override
    public String getPageTitle() {
        return getTranslation("letters.view");
    }

    private Div wording(Orders orders) {
        kind.setLabel(getTranslation("letters.view.kind"));
        kind.setItems(LetterKind.values());
        kind.setItemLabelGenerator(one -> getTranslation(one.textKey()));
        kind.addValueChangeListener(change -> choose(change.getOldValue()));
        subject.setLabel(getTranslation("letters.write.subject"));
        body.setLabel(getTranslation("letters.write.body"));
        body.setMinRows(12);
        subject.setValueChangeMode(ValueChangeMode.LAZY);
        body.setValueChangeMode(ValueChangeMode.LAZY);
        subject.addValueChangeListener(change -> look());
        body.addValueChangeListener(change -> look());
        fields.addClassName("letters-fields");
        Button save = new Button(getTranslation("letters.view.save"), press -> save());
        save.addThemeVariants(ButtonVariant.PRIMARY);
        Button standard = new Button(getTranslation("letters.view.standard"), press -> {
            if (Feedback.unlessRefused(figures, "letters.view.reset", () -> wordings.reset(kind.getValue()))) {
                read(wordings.of(kind.getValue()));
            }
        });
        standard.addThemeVariants(ButtonVariant.TERTIARY);
        Div buttons = new Div(save, standard);
        buttons.addClassName("pw-row");
        SmallText brackets = new SmallText(getTranslation("letters.view.brackets"));
        Div words = new Div(kind, subject, body, fields, brackets, complaint, buttons);
        words.addClassName("pw-stack");
        List<Order> known = orders.list(OrderFilter.ALL, 0, ORDERS);
        order.setLabel(getTranslation("letters.view.order"));
        order.setItems(known);
        order.setItemLabelGenerator(one -> one.number() + " · " + one.customer().name());
        order.addValueChangeListener(change -> look());
        if (!known.isEmpty()) {
            order.setValue(known.getFirst());
        }
        Div beside = new Div(order, preview);
        beside.addClassName("pw-stack");
        Div columns = new Div(words, beside);
        columns.addClassName("letters-columns");
        PageSection section = new PageSection(getTranslation("letters.view.words"), columns);
        return section;
    }

    /** Words that were changed and not saved are given up only when the owner says so. */
    private void choose(LetterKind before) {
        if (shown != null && shown.kind() == kind.getValue()) {
            return;
        }
        boolean edited = shown != null
                && !(subject.getValue().equals(shown.subject())
                        && body.getValue().equals(shown.body()));
        if (!edited) {
            read(wordings.of(kind.getValue()));
            return;
        }
        SafeQuestion question = new SafeQuestion(
                getTranslation("letters.view.edited"),
                getTranslation("letters.write.edited.keep"),
                getTranslation("letters.write.edited.replace"));
        question.addCancelListener(keep -> kind.setValue(before));
        question.addConfirmListener(replace -> read(wordings.of(kind.getValue())));
        question.open();
    }

    private void read(Wording wording) {
        shown = wording;
        subject.setValue(wording.subject());
        body.setValue(wording.body());
        fields.removeAll();
        wording.kind().fields().forEach(field -> fields.add(field(field)));
        look();
    }

    /** Puts the field where the writing stands: at the end of the words, from where it is moved. */
    private Button field(LetterField field) {
        String word = "{" + field.word() + "}";
        Button chip = new Button(word, press -> body.setValue(body.getValue() + " " + word));
        chip.setTooltipText(getTranslation(field.textKey()));
        chip.setAriaLabel(getTranslation(
                "letters.view.field", word, getTranslation(field.textKey()).toLowerCase(Locale.ROOT)));
        chip.addThemeVariants(ButtonVariant.SMALL, ButtonVariant.TERTIARY);
        chip.addClassName("letters-field");
        return chip;
    }

    private Wording typed() {
        return new Wording(kind.getValue(), subject.getValue(), body.getValue());
    }

    private void save() {
        try {
            Wording typed = typed();
            wordings.save(typed);
            shown = typed;
            complain("");
            Feedback.tell(getTranslation("letters.view.saved"), false);
        } catch (Refused refused) {
            complain(figures.say(refused));
        }
    }

    private void complain(String words) {
        complaint.setText(words);
        complaint.setVisible(!words.isEmpty());
    }

    private void look() {
        preview.removeAll();
        if (order.getValue() == null || kind.getValue() == null) {
            preview.add(new Paragraph(getTranslation("letters.view.no-order")));
            return;
        }
        try {
            Draft draft = letters.preview(order.getValue().id(), typed().checked());
            complain("");
            String missing = draft.missing().stream()
                    .map(field -> getTranslation(field.textKey()))
                    .sorted()
                    .collect(Collectors.joining(", "));
            Paragraph head = new Paragraph(draft.subject());
            head.addClassName("letters-subject");
            preview.add(head, new LetterPage(letters.page(draft), getTranslation("letters.write.look")));
            if (!missing.isEmpty()) {
                SmallText note = new SmallText(getTranslation("letters.view.missing", missing));
                preview.add(note);
            }
        } catch (Refused refused) {
            complain(figures.say(refused));
        }
    }
}
