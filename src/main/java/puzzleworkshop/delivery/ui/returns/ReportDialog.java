package puzzleworkshop.delivery.ui.returns;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextArea;
import puzzleworkshop.delivery.returns.Complaint.Reason;
import puzzleworkshop.delivery.returns.Complaints;
import puzzleworkshop.delivery.returns.Complaints.Report;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.Order;
import puzzleworkshop.workshop.Stage;

/** Writes down what a customer found wrong, or why something came back. */
class ReportDialog extends Dialog {

    ReportDialog(Order order, Complaints complaints, Formatter figures, String who, Runnable again) {
        setHeaderTitle(getTranslation("delivery.complaint.title", order.number()));
        Select<Reason> reason = new Select<>();
        reason.setLabel(getTranslation("delivery.complaint.reason"));
        reason.setItems(Reason.values());
        reason.setItemLabelGenerator(one -> getTranslation(one.textKey()));
        Select<Stage> stage = new Select<>();
        stage.setLabel(getTranslation("delivery.complaint.stage"));
        stage.setItems(Stage.values());
        stage.setItemLabelGenerator(one -> getTranslation(one.textKey()));
        reason.addValueChangeListener(e -> stage.setValue(e.getValue().usually()));
        reason.setValue(Reason.PIECE_MISSING);
        TextArea words = new TextArea(getTranslation("delivery.complaint.said"));
        Button keep = new Button(getTranslation("workshop.save"), e -> {
            if (Feedback.unlessRefused(
                    figures,
                    "delivery.complaint.kept",
                    () -> complaints.report(
                            order.id(), new Report(reason.getValue(), stage.getValue(), words.getValue()), who))) {
                close();
                again.run();
            }
        });
        keep.addThemeVariants(ButtonVariant.PRIMARY);
        Div form = new Div(reason, stage, words);
        form.addClassName("pw-stack");
        add(form);
        getFooter().add(new Button(getTranslation("planning.close"), e -> close()), keep);
        setWidth("min(30rem, 95vw)");
    }
}
