package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.html.Paragraph;
import java.time.LocalDate;
import java.util.function.Consumer;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.SafeQuestion;
import puzzleworkshop.offers.PromiseCheck.TooEarly;

/** Names whom a promise would make late, and asks: leave it, promise the earliest day, or keep the day all the same. */
class TooEarlyQuestion extends SafeQuestion {

    /**
     * @param leave words of the answer that changes nothing
     * @param take with the day that is to be promised
     */
    TooEarlyQuestion(TooEarly found, String leave, Formatter figures, Consumer<LocalDate> take) {
        super(
                figures.text("offers.confirm.too-early", found.promised()),
                leave,
                figures.text("offers.confirm.earliest", found.earliest()));
        // the way that harms nobody is the one that stands out
        setRejectable(true);
        setRejectText(figures.text("offers.confirm.all-the-same", found.promised()));
        setRejectButtonTheme("tertiary");
        add(
                new Paragraph(figures.text("offers.new.too-early.why", found.earliest())),
                new HarmList(found.forecast(), found.promised()));
        addConfirmListener(event -> take.accept(found.earliest()));
        addRejectListener(event -> take.accept(found.promised()));
    }
}
