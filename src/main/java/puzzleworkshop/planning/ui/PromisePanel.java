package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import java.util.Optional;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.AmountField;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderPanel;
import puzzleworkshop.payments.PaymentsAwaited;
import puzzleworkshop.planning.Notices;
import puzzleworkshop.planning.WeekPlan;
import puzzleworkshop.planning.WeekPlan.Entry;
import puzzleworkshop.planning.schedule.DueVerdict;
import puzzleworkshop.planning.schedule.Schedule;
import puzzleworkshop.workshop.SignedIn;

/** On the order's page: what was promised, what the plan says, words for the customer, and money that comes first. */
@org.springframework.stereotype.Component
class PromisePanel implements OrderPanel {

    private static final int BESIDE_PROGRESS = 8;

    private final WeekPlan plan;
    private final Notices notices;
    private final PaymentsAwaited payments;
    private final Formatter figures;
    private final SignedIn signedIn;

    PromisePanel(WeekPlan plan, Notices notices, PaymentsAwaited payments, Formatter figures, SignedIn signedIn) {
        this.plan = plan;
        this.notices = notices;
        this.payments = payments;
        this.figures = figures;
        this.signedIn = signedIn;
    }

    @Override
    public int place() {
        return BESIDE_PROGRESS;
    }

    @Override
    public Optional<Component> show(Order order, Runnable changed) {
        return plan.now().of(order.id()).map(entry -> panel(entry, changed));
    }

    private Component panel(Entry entry, Runnable changed) {
        Div panel = new Box();
        panel.add(new H2(figures.text("planning.promise")), new PlanVerdict(entry.outlook(), figures));
        panel.add(new Paragraph(words(entry)));
        Button tell = new Button(
                figures.text("planning.tell"),
                e -> new TellDialog(entry, notices, figures, signedIn.name(), changed).open());
        DueVerdict verdict = entry.outlook().verdict();
        if (verdict == DueVerdict.LATE) {
            tell.addThemeVariants(ButtonVariant.PRIMARY);
        }
        Div buttons = new Div(tell);
        buttons.addClassName("pw-row");
        panel.add(buttons);
        if (signedIn.isOwner()) {
            payment(entry.order(), panel, buttons, changed);
        }
        return panel;
    }

    private String words(Entry entry) {
        String promised = entry.order()
                .promised()
                .map(day -> figures.text("planning.promise.by", day, entry.way().name()))
                .orElse(figures.text("planning.card.no-day"));
        if (entry.toBeCollected()) {
            return promised + " " + figures.text("planning.promise.kept");
        }
        String ready = entry.outlook().finish().equals(Schedule.NEVER)
                ? figures.text("planning.relief.never")
                : figures.text(
                        "planning.promise.reaches",
                        entry.outlook().finish().toLocalDate(),
                        plan.reaches(entry).orElseThrow());
        return promised + " " + ready;
    }

    private void payment(Order order, Div panel, Div buttons, Runnable changed) {
        Optional<PaymentsAwaited.Asked> asked = payments.of(order.id());
        asked.ifPresentOrElse(
                wait -> {
                    boolean came = payments.hasCome(wait);
                    SmallText words = new SmallText(figures.text(
                            came ? "planning.payment.came" : "planning.payment.waits",
                            wait.amount(),
                            wait.who(),
                            wait.at()));
                    panel.add(words);
                    if (!came) {
                        Button go = new Button(figures.text("planning.payment.let-go"), e -> {
                            payments.letGo(order.id(), signedIn.name());
                            changed.run();
                        });
                        go.addThemeVariants(ButtonVariant.TERTIARY);
                        buttons.add(go);
                    }
                },
                () -> {
                    Button ask = new Button(
                            figures.text("planning.payment.ask"),
                            e -> askDialog(order, changed).open());
                    ask.addThemeVariants(ButtonVariant.TERTIARY);
                    buttons.add(ask);
                });
    }

    private Dialog askDialog(Order order, Runnable changed) {
        Dialog dialog = new Dialog(figures.text("planning.payment.title", order.number()));
        Money half = order.price().gross().dividedBy(2).rounded();
        AmountField amount = AmountField.money(
                figures.text("planning.payment.amount", half.currency().getCurrencyCode()), half.currency());
        amount.setValue(half.amount());
        amount.setHelperText(figures.text("planning.payment.of", order.price().gross()));
        Button ask = new Button(figures.text("planning.payment.book"), e -> {
            if (Feedback.unlessRefused(figures, "planning.payment.booked", () -> {
                payments.ask(order.id(), amount.needed(half.currency()), signedIn.name());
            })) {
                dialog.close();
                changed.run();
            }
        });
        ask.addThemeVariants(ButtonVariant.PRIMARY);
        dialog.add(new Paragraph(figures.text("planning.payment.lead")), amount);
        dialog.getFooter().add(new Button(figures.text("planning.close"), e -> dialog.close()), ask);
        dialog.setWidth("min(28rem, 95vw)");
        return dialog;
    }

    /** Carries its own style sheet to whichever page it is shown on. */
    @StyleSheet("context://planning.css")
    private static final class Box extends Div {
        Box() {
            addClassNames("pw-section", "planning-promise");
        }
    }
}
