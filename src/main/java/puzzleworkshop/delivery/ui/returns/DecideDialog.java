package puzzleworkshop.delivery.ui.returns;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.radiobutton.RadioButtonGroup;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextArea;
import java.util.Arrays;
import java.util.Optional;
import puzzleworkshop.delivery.returns.Complaint;
import puzzleworkshop.delivery.returns.Complaint.PostageBy;
import puzzleworkshop.delivery.returns.Complaint.Reason;
import puzzleworkshop.delivery.returns.Complaint.Remedy;
import puzzleworkshop.delivery.returns.Complaints;
import puzzleworkshop.delivery.returns.Remedies;
import puzzleworkshop.delivery.returns.Remedies.Terms;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.papers.Invoices;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** What is done about a complaint: made again, money back, one piece again or nothing; and who bears postage. */
class DecideDialog extends Dialog {

    private final RadioButtonGroup<Remedy> remedy = new RadioButtonGroup<>();
    private final Select<Reason> reason = new Select<>();
    private final Select<Stage> stage = new Select<>();
    private final Select<PostageBy> by = new Select<>();
    private final AmountField postage;
    private final AmountField amount;
    private final TextArea answer = new TextArea();
    private final Paragraph says = new Paragraph();
    private final transient Workshop workshop;

    DecideDialog(
            Order order,
            Complaint complaint,
            Complaints complaints,
            Remedies remedies,
            Invoices invoices,
            Workshop workshop,
            Formatter figures,
            String who,
            Runnable again) {
        this.workshop = workshop;
        String currency = workshop.currency().getCurrencyCode();
        postage = AmountField.money(getTranslation("delivery.complaint.postage-amount", currency), workshop.currency());
        amount = AmountField.money(getTranslation("delivery.complaint.amount", currency), workshop.currency());
        setHeaderTitle(getTranslation("delivery.complaint.decide-title", order.number()));
        reason.setLabel(getTranslation("delivery.complaint.reason"));
        reason.setItems(Reason.values());
        reason.setItemLabelGenerator(one -> getTranslation(one.textKey()));
        reason.setValue(complaint.reason());
        stage.setLabel(getTranslation("delivery.complaint.stage"));
        stage.setItems(Stage.values());
        stage.setItemLabelGenerator(one -> getTranslation(one.textKey()));
        stage.setValue(complaint.stage());
        reason.addValueChangeListener(e -> stage.setValue(e.getValue().usually()));
        remedy.setLabel(getTranslation("delivery.complaint.remedy"));
        remedy.setItems(Remedy.values());
        remedy.setItemLabelGenerator(one -> getTranslation(one.textKey()));
        remedy.addValueChangeListener(e -> show(e.getValue()));
        by.setLabel(getTranslation("delivery.complaint.postage-by"));
        by.setItems(PostageBy.values());
        by.setItemLabelGenerator(one -> getTranslation(one.textKey()));
        by.addValueChangeListener(e -> postage.setVisible(e.getValue() == PostageBy.WORKSHOP));
        by.setValue(PostageBy.WORKSHOP);
        try {
            invoices.account(order.id())
                    .standing()
                    .ifPresent(invoice -> amount.setValue(
                            invoices.account(order.id()).rest(invoice).rounded().amount()));
        } catch (Refused forOwners) {
            // money back is an owner's to give; all else can be decided
            remedy.setItems(Arrays.stream(Remedy.values())
                    .filter(one -> one != Remedy.REFUND)
                    .toList());
        }
        answer.setLabel(getTranslation("delivery.complaint.answer"));
        says.addClassName("pw-small");
        remedy.setValue(Remedy.REMAKE);
        // A complaint is decided once, so two windows that see it undecided mean one decision.
        BookingKey key = BookingKey.seen("complaint", complaint.id());
        BookButton book = new BookButton(getTranslation("delivery.complaint.book"), () -> {
            boolean booked = Feedback.unlessRefused(figures, "delivery.complaint.booked", () -> {
                Terms terms = terms();
                complaints.classify(complaint.id(), reason.getValue(), stage.getValue());
                switch (remedy.getValue()) {
                    case REMAKE -> remedies.remake(key, complaint.id(), terms, who);
                    case REFUND -> remedies.refund(key, complaint.id(), amount.needed(workshop.currency()), terms, who);
                    default -> remedies.settle(complaint.id(), remedy.getValue(), terms, who);
                }
            });
            if (booked) {
                close();
                again.run();
            }
            return booked;
        });
        book.addThemeVariants(ButtonVariant.PRIMARY);
        Div form = new Div(reason, stage, remedy, says, amount, by, postage, answer);
        form.addClassName("pw-stack");
        add(form);
        getFooter().add(new Button(getTranslation("planning.close"), e -> close()), book);
        setWidth("min(32rem, 95vw)");
    }

    private void show(Remedy chosen) {
        amount.setVisible(chosen == Remedy.REFUND);
        says.setText(getTranslation("delivery.remedy.says." + chosen.name()));
    }

    private Terms terms() {
        return new Terms(
                by.getValue(),
                // a field that is not shown says nothing
                postage.isVisible() ? postage.typed(workshop.currency()) : Optional.empty(),
                answer.getValue());
    }
}
