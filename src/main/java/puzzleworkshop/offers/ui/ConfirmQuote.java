package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.progressbar.ProgressBar;
import java.time.Duration;
import java.util.Optional;
import puzzleworkshop.boards.Confirmations;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.LatestAnswer;
import puzzleworkshop.display.progress.WorkingBar;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.offers.PromiseCheck;
import puzzleworkshop.offers.PromiseCheck.TooEarly;
import puzzleworkshop.orders.Order;

/**
 * Takes a quote as an order. Whose promise that would break is looked up first and said by name; then the day it says, the
 * earliest one, or nothing at all is for a person to choose.
 */
class ConfirmQuote extends Div {

    private final transient Order order;
    private final transient Confirmations confirmations;
    private final transient Formatter figures;
    private final String who;
    private final transient Runnable changed;
    private final Button confirm;
    private final ProgressBar busy = new WorkingBar();
    private final transient LatestAnswer<Optional<TooEarly>> check = new LatestAnswer<>(Duration.ZERO);

    ConfirmQuote(
            Order order,
            Confirmations confirmations,
            PromiseCheck promises,
            Formatter figures,
            String who,
            Runnable changed) {
        this.order = order;
        this.confirmations = confirmations;
        this.figures = figures;
        this.who = who;
        this.changed = changed;
        confirm = new Button(figures.text("orders.action.confirm"), event -> {
            working(true);
            check.ask(outdated -> promises.of(order.id()), this::answered, this::failed);
        });
        confirm.addThemeVariants(ButtonVariant.PRIMARY);
        confirm.setDisableOnClick(true);
        busy.setIndeterminate(true);
        busy.setVisible(false);
        add(confirm, busy);
    }

    private void working(boolean now) {
        busy.setVisible(now);
        confirm.setEnabled(!now);
    }

    private void failed(RuntimeException wrong) {
        working(false);
        if (!(wrong instanceof Refused refused)) {
            throw wrong; // a fault of the screen: logged once, and said with its mark
        }
        Feedback.tell(figures.say(refused), true);
    }

    private void answered(Optional<TooEarly> found) {
        working(false);
        found.ifPresentOrElse(
                tooEarly -> new TooEarlyQuestion(
                                tooEarly,
                                figures.text("offers.confirm.leave"),
                                figures,
                                day -> take(() -> confirmations.confirm(order.id(), day, who)))
                        .open(),
                () -> take(() -> confirmations.confirm(order.id(), who)));
    }

    private void take(Runnable booking) {
        Feedback.unlessRefused(figures, "orders.action.confirmed", booking);
        changed.run();
    }
}
