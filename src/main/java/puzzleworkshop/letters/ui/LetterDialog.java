package puzzleworkshop.letters.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.details.Details;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import puzzleworkshop.display.Clipboard;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.PageAddress;
import puzzleworkshop.display.SafeQuestion;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.letters.Draft;
import puzzleworkshop.letters.LetterField;
import puzzleworkshop.letters.LetterKind;
import puzzleworkshop.letters.Letters;
import puzzleworkshop.letters.mail.MailAccounts;
import puzzleworkshop.letters.mail.Message;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.planning.Notices;
import puzzleworkshop.planning.ui.ShareButton;
import puzzleworkshop.proofs.Proofs;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/** A letter about an order: proposed in the house's wording, changed at will, then copied, shared, mailed or sent. */
@StyleSheet("context://letters.css")
public class LetterDialog extends Dialog {

    private final transient Order order;
    private final transient Letters letters;
    private final transient Proofs proofs;
    private final transient Workshop workshop;
    private final transient SignedIn signedIn;
    private final transient Formatter figures;
    private final transient BookingKey key = BookingKey.fresh();
    private final transient Map<LetterField, String> known = new EnumMap<>(LetterField.class);
    private final Select<LetterKind> kind = new Select<>();
    private final TextField subject = new TextField();
    private final TextArea body = new TextArea();
    private final Paragraph missing = new Paragraph();
    private final Paragraph papers = new Paragraph();
    private final Button link = new Button();
    private final Anchor mail = new Anchor();
    private final ShareButton share = new ShareButton(getTranslation("letters.write.share"));
    private final Details look = new Details(getTranslation("letters.write.look"));
    private final BookButton byHand;
    private final BookButton send;
    private transient Draft draft;

    /** @param kinds from which to choose, the proposed one first */
    LetterDialog(
            Order order,
            List<LetterKind> kinds,
            Letters letters,
            MailAccounts accounts,
            Proofs proofs,
            Workshop workshop,
            SignedIn signedIn,
            Formatter figures,
            Runnable changed) {
        this.order = order;
        this.letters = letters;
        this.proofs = proofs;
        this.workshop = workshop;
        this.signedIn = signedIn;
        this.figures = figures;
        addClassName("letters-dialog");
        setWidth("min(40rem, 95vw)");
        setHeaderTitle(getTranslation("letters.write.title", order.customer().name(), order.number()));
        kind.setLabel(getTranslation("letters.write.kind"));
        kind.setItems(kinds);
        kind.setItemLabelGenerator(one -> getTranslation(one.textKey()));
        subject.setLabel(getTranslation("letters.write.subject"));
        subject.setMaxLength(200);
        body.setLabel(getTranslation("letters.write.body"));
        body.setMinRows(8);
        body.setMaxRows(16);
        body.setMaxLength(8000);
        subject.setValueChangeMode(ValueChangeMode.LAZY);
        body.setValueChangeMode(ValueChangeMode.LAZY);
        missing.addClassName("pw-note");
        missing.getElement().setAttribute("data-kind", "warn");
        papers.addClassName("pw-small");
        link.setText(getTranslation("letters.write.link"));
        link.addClickListener(press -> makeLink());
        mail.setText(getTranslation("letters.write.mail"));
        Button copy = new Button(
                getTranslation("letters.write.copy"),
                press -> Clipboard.copy(body, getTranslation("letters.write.copied")));
        boolean sends =
                accounts.sends() && Letters.mailOf(order.customer().contact()).isPresent();
        send = new BookButton(
                getTranslation("letters.write.send"),
                () -> done("letters.write.sent", () -> letters.send(key, worded()), changed));
        send.setVisible(sends);
        byHand = new BookButton(
                getTranslation("letters.write.by-hand"),
                () -> done("letters.write.kept", () -> letters.byHand(key, worded()), changed));
        (sends ? send : byHand).addThemeVariants(ButtonVariant.PRIMARY);
        SmallText contact = new SmallText(
                order.customer().contact().isBlank()
                        ? getTranslation("letters.write.no-contact")
                        : getTranslation(
                                "letters.write.contact", order.customer().contact()));
        Div ways = new Div(copy, share, mail);
        ways.addClassName("pw-row");
        look.addOpenedChangeListener(open -> preview());
        Div form = new Div(kind, contact, link, subject, body, missing, papers, ways, look);
        form.addClassName("pw-stack");
        add(form);
        getFooter().add(new Button(getTranslation("letters.write.close"), press -> close()), byHand, send);
        kind.addValueChangeListener(change -> choose(change.getOldValue()));
        subject.addValueChangeListener(change -> words());
        body.addValueChangeListener(change -> words());
        kind.setValue(kinds.getFirst());
    }

    private boolean done(String doneKey, Runnable book, Runnable changed) {
        if (!Feedback.unlessRefused(figures, doneKey, book)) {
            return false;
        }
        close();
        changed.run();
        return true;
    }

    private Draft worded() {
        return draft.withWords(subject.getValue().strip(), body.getValue().strip());
    }

    /** Whether the words are still those that were proposed. */
    private boolean isEdited() {
        return draft != null
                && !(subject.getValue().equals(draft.subject())
                        && body.getValue().equals(draft.body()));
    }

    /** Another kind has other words: typed ones are given up only when the person says so. */
    private void choose(LetterKind before) {
        if (kind.getValue() == null || draft != null && draft.kind() == kind.getValue()) {
            return;
        }
        if (!isEdited()) {
            propose();
            return;
        }
        SafeQuestion question = new SafeQuestion(
                getTranslation("letters.write.edited"),
                getTranslation("letters.write.edited.keep"),
                getTranslation("letters.write.edited.replace"));
        question.addCancelListener(keep -> kind.setValue(before));
        question.addConfirmListener(replace -> propose());
        question.open();
    }

    /** The wording of the chosen kind. */
    private void propose() {
        boolean proof = kind.getValue().fields().contains(LetterField.LINK);
        link.setVisible(proof);
        try {
            draft = letters.draft(order.id(), kind.getValue(), known);
        } catch (Refused refused) {
            draft = null;
            subject.clear();
            body.clear();
            tellMissing(figures.say(refused));
            papers.setVisible(false);
            byHand.setEnabled(false);
            send.setEnabled(false);
            return;
        }
        byHand.setEnabled(true);
        send.setEnabled(true);
        subject.setValue(draft.subject());
        body.setValue(draft.body());
        tellDraft();
        words();
    }

    /** What the proposal lacks, and what goes with it. */
    private void tellDraft() {
        String fields = draft.missing().stream()
                .map(field -> getTranslation(field.textKey()))
                .sorted()
                .collect(Collectors.joining(", "));
        tellMissing(fields.isEmpty() ? "" : getTranslation("letters.write.missing", fields));
        papers.setVisible(!draft.papers().isEmpty());
        papers.setText(getTranslation(
                "letters.write.papers",
                draft.papers().stream().map(Message.Part::name).collect(Collectors.joining(", "))));
    }

    private void tellMissing(String words) {
        missing.setText(words);
        missing.setVisible(!words.isEmpty());
    }

    private void words() {
        share.share(subject.getValue(), body.getValue());
        Optional<String> address = Letters.mailOf(order.customer().contact());
        mail.setVisible(address.isPresent());
        address.ifPresent(to -> mail.setHref(Notices.mailto(to, subject.getValue(), body.getValue())));
        preview();
    }

    private void preview() {
        if (look.isOpened() && draft != null) {
            look.removeAll();
            look.add(new LetterPage(letters.page(worded()), getTranslation("letters.write.look")));
        }
    }

    /** The token is told only when it is made, so a letter with the link needs one of its own. */
    private void makeLink() {
        getUI().ifPresent(ui -> PageAddress.root(ui, workshop.profile().publicUrl(), this::linkAt));
    }

    void linkAt(String root) {
        String made =
                root + "/p/" + proofs.makeLink(order.id(), signedIn.name()).text();
        known.put(LetterField.LINK, made);
        link.setEnabled(false);
        if (!isEdited()) {
            propose();
            return;
        }
        draft = letters.draft(order.id(), kind.getValue(), known);
        body.setValue(LateLink.into(body.getValue(), draft.body(), made));
        tellDraft();
        words();
    }
}
