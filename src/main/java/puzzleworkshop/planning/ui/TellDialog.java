package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.util.Optional;
import puzzleworkshop.display.Clipboard;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.DayField;
import puzzleworkshop.orders.Order;
import puzzleworkshop.planning.Notices;
import puzzleworkshop.planning.Notices.Notice;
import puzzleworkshop.planning.WeekPlan.Entry;
import puzzleworkshop.planning.schedule.Job.Wait;

/** A message to the customer to copy or to mail, and the mark that they were told. */
@StyleSheet("context://planning.css")
public class TellDialog extends Dialog {

    private final transient Order order;
    private final transient Optional<Wait.For> waitsFor;
    private final transient Notices notices;
    private final TextField subject = new TextField();
    private final TextArea body = new TextArea();
    private final DayField day = new DayField();
    private final Anchor mail = new Anchor();
    private final ShareButton share = new ShareButton(getTranslation("planning.tell.share"));
    private final Button told = new Button();
    private boolean ownWords;

    /** @param after run when the customer was told */
    public TellDialog(Entry entry, Notices notices, Formatter figures, String who, Runnable after) {
        this.order = entry.order();
        this.waitsFor = entry.outlook().waitsFor().map(Wait::forWhat);
        this.notices = notices;
        addClassName("planning-tell");
        setHeaderTitle(getTranslation("planning.tell.title", order.customer().name(), order.number()));
        subject.setLabel(getTranslation("planning.tell.subject"));
        body.setLabel(getTranslation("planning.tell.body"));
        body.setMinRows(7);
        subject.setValueChangeMode(ValueChangeMode.LAZY);
        body.setValueChangeMode(ValueChangeMode.LAZY);
        day.setLabel(getTranslation("planning.tell.day"));
        day.setHelperText(order.promised()
                .map(d -> getTranslation("planning.tell.day.now", figures.day(d)))
                .orElse(null));
        day.setClearButtonVisible(true);
        mail.setText(getTranslation("planning.tell.mail"));
        mail.addClassName("planning-link");
        Notice proposed = notices.about(entry);
        day.setValue(proposed.day().orElse(null));
        write(proposed);
        day.addValueChangeListener(e -> {
            if (!ownWords) {
                write(notices.about(order, waitsFor, Optional.ofNullable(day.getValue())));
            }
            label(figures);
        });
        subject.addValueChangeListener(e -> link(e.isFromClient()));
        body.addValueChangeListener(e -> link(e.isFromClient()));
        Button copy = new Button(
                getTranslation("planning.tell.copy"),
                e -> Clipboard.copy(body, getTranslation("planning.tell.copied")));
        told.addClickListener(e -> {
            if (!day.isFit()) {
                // a day that cannot be read is not told as none
                day.refuse();
                return;
            }
            if (Feedback.unlessRefused(
                    figures,
                    "planning.tell.kept",
                    () -> notices.told(
                            order,
                            waitsFor,
                            new Notice(subject.getValue(), body.getValue(), Optional.ofNullable(day.getValue())),
                            who))) {
                close();
                after.run();
            }
        });
        told.addThemeVariants(ButtonVariant.PRIMARY);
        label(figures);
        SmallText contact = new SmallText(
                order.customer().contact().isBlank()
                        ? getTranslation("planning.tell.no-contact")
                        : getTranslation(
                                "planning.tell.contact", order.customer().contact()));
        Div ways = new Div(copy, share, mail);
        ways.addClassName("pw-row");
        Div form = new Div(contact, day, subject, body, ways);
        form.addClassName("pw-stack");
        add(form);
        getFooter().add(new Button(getTranslation("planning.close"), e -> close()), told);
        setWidth("min(34rem, 95vw)");
    }

    private void write(Notice notice) {
        subject.setValue(notice.subject());
        body.setValue(notice.body());
        link(false);
    }

    private void link(boolean typed) {
        ownWords |= typed;
        share.share(subject.getValue(), body.getValue());
        Optional<String> address = Notices.mailOf(order.customer());
        mail.setVisible(address.isPresent());
        address.ifPresent(to -> mail.setHref(Notices.mailto(to, subject.getValue(), body.getValue())));
    }

    private void label(Formatter figures) {
        told.setText(
                day.getValue() == null
                        ? getTranslation("planning.tell.told")
                        : getTranslation("planning.tell.told-day", figures.day(day.getValue())));
    }
}
