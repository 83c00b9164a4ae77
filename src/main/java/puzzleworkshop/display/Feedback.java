package puzzleworkshop.display;

import com.vaadin.flow.component.ComponentUtil;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.notification.Notification;
import com.vaadin.flow.component.notification.NotificationVariant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/** Tells the outcome of a press on a button: done, or refused and why. */
public final class Feedback {

    private static final int SECONDS = 3;

    /** What stands over a page, oldest first. */
    private static final class Said {
        private final List<Notification> cards = new ArrayList<>();

        private static Said on(UI ui) {
            Said said = ComponentUtil.getData(ui, Said.class);
            if (said == null) {
                said = new Said();
                ComponentUtil.setData(ui, Said.class, said);
            }
            return said;
        }

        private void close(Predicate<Notification> which) {
            cards.stream().filter(which).toList().forEach(Notification::close);
            cards.removeIf(card -> !card.isOpened());
        }

        private void open(Notification card) {
            cards.add(card);
            card.open();
        }
    }

    private Feedback() {}

    /** Runs what was asked; a refusal is shown as its sentence and stays longer. True when it was done. */
    public static boolean unlessRefused(Formatter figures, String doneKey, Runnable asked) {
        return unlessRefused(figures, Sentence.of(doneKey), asked);
    }

    /** The same, when the words of success name what it was about. */
    public static boolean unlessRefused(Formatter figures, Sentence done, Runnable asked) {
        try {
            asked.run();
        } catch (Refused refused) {
            tell(figures.say(refused), true);
            return false;
        }
        tell(figures.say(done), false);
        return true;
    }

    /**
     * Says it. What was said before goes where it would only pile up over the page, or is over: anything before a success,
     * a refusal before the same refusal.
     */
    public static void tell(String sentence, boolean refusal) {
        Said said = Said.on(UI.getCurrentOrThrow());
        said.close(card -> !refusal || sentence.equals(card.getElement().getProperty("text")));
        // a refusal stays longer, so it stands where it hides neither the field to be mended nor the button to be
        // pressed again
        Notification card = new Notification(
                sentence,
                SECONDS * (refusal ? 4000 : 1000),
                refusal ? Notification.Position.TOP_CENTER : Notification.Position.BOTTOM_CENTER);
        if (refusal) {
            card.addThemeVariants(NotificationVariant.ERROR);
        }
        said.open(card);
    }

    /** For whoever tells refusals only: an empty sentence is nothing to tell. */
    public static void refusal(String sentence) {
        if (!sentence.isEmpty()) {
            tell(sentence, true);
        }
    }
}
