package puzzleworkshop.display;

import com.vaadin.flow.component.ComponentUtil;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.notification.Notification;
import com.vaadin.flow.component.notification.NotificationVariant;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/** Tells the outcome of a press on a button: done, or refused and why. */
public final class Feedback {

    private static final int SECONDS = 3;

    private record Said(Notification card, String sentence, boolean refusal) {}

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
     * Says it. What was said before goes where it would only pile up over the page: a success before the next one, a
     * refusal before the same refusal.
     */
    public static void tell(String sentence, boolean refusal) {
        UI ui = UI.getCurrentOrThrow();
        Said before = ComponentUtil.getData(ui, Said.class);
        if (before != null && (refusal ? before.sentence().equals(sentence) : !before.refusal())) {
            before.card().close();
        }
        // a refusal stays longer, so it stands where it hides neither the field to be mended nor the button to be
        // pressed again
        Notification card = new Notification(
                sentence,
                SECONDS * (refusal ? 4000 : 1000),
                refusal ? Notification.Position.TOP_CENTER : Notification.Position.BOTTOM_CENTER);
        if (refusal) {
            card.addThemeVariants(NotificationVariant.ERROR);
        }
        ComponentUtil.setData(ui, Said.class, new Said(card, sentence, refusal));
        card.open();
    }

    /** For whoever tells refusals only: an empty sentence is nothing to tell. */
    public static void refusal(String sentence) {
        if (!sentence.isEmpty()) {
            tell(sentence, true);
        }
    }
}
