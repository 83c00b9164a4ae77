package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.progressbar.ProgressBar;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import puzzleworkshop.delivery.sending.CheapestWay;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.LatestAnswer;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.progress.WorkingBar;
import puzzleworkshop.measure.Refused;

/**
 * By which way a parcel goes best, and why; one press takes it where it is another one than now. Worked out beside the
 * screen: it takes the pattern and the boxes of each order in the parcel.
 */
class WayAnswer extends Div {

    private final transient Supplier<Optional<CheapestWay.Answer>> advice;
    private final transient SendingWay now;
    private final transient Formatter figures;
    private final transient Consumer<SendingWay> take;
    private final transient LatestAnswer<Optional<CheapestWay.Answer>> latest = new LatestAnswer<>(Duration.ZERO);

    /**
     * @param advice absent while nothing is known of the parcel's size
     * @param take lets it leave by another way
     */
    WayAnswer(
            Supplier<Optional<CheapestWay.Answer>> advice,
            SendingWay now,
            Formatter figures,
            Consumer<SendingWay> take) {
        this.advice = advice;
        this.now = now;
        this.figures = figures;
        this.take = take;
        addClassName("pw-stack");
        getElement().setAttribute("aria-live", "polite");
    }

    /** Works it out now and says it here. */
    WayAnswer say() {
        ProgressBar busy = new WorkingBar();
        busy.setIndeterminate(true);
        removeAll();
        add(busy);
        latest.ask(outdated -> advice.get(), this::answered, this::failed);
        return this;
    }

    private void failed(RuntimeException wrong) {
        removeAll();
        if (!(wrong instanceof Refused refused)) {
            throw wrong; // a fault of the screen: logged once, and said with its mark
        }
        add(new SmallText(figures.say(refused)));
    }

    private void answered(Optional<CheapestWay.Answer> answer) {
        removeAll();
        if (answer.isEmpty()) {
            add(new SmallText(figures.text("delivery.way.unmeasured")));
            return;
        }
        add(new SmallText(figures.say(answer.get().reason())));
        answer.get()
                .best()
                .ifPresent(best -> add(new SmallText(figures.say(best.journey().why()))));
        answer.get()
                .best()
                .map(CheapestWay.Offer::way)
                .filter(best -> best.way().id() != now.way().id())
                .ifPresent(best -> {
                    Button other =
                            new Button(figures.text("delivery.way.take", best.name()), press -> take.accept(best));
                    other.addThemeVariants(ButtonVariant.TERTIARY);
                    add(other);
                });
        answer.get().refused().forEach(why -> add(new SmallText(figures.say(why))));
    }
}
