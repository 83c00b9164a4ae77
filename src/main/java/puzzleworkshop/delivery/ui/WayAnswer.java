package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import java.util.Optional;
import java.util.function.Consumer;
import puzzleworkshop.delivery.sending.CheapestWay;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;

/** By which way a parcel goes best, and why; one press takes it where it is another one than now. */
class WayAnswer extends Div {

    /**
     * @param answer absent while nothing is known of the parcel's size
     * @param take lets it leave by another way
     */
    WayAnswer(Optional<CheapestWay.Answer> answer, SendingWay now, Formatter figures, Consumer<SendingWay> take) {
        addClassName("pw-stack");
        if (answer.isEmpty()) {
            add(new SmallText(figures.text("delivery.way.unmeasured")));
            return;
        }
        add(new SmallText(figures.say(answer.get().reason())));
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
