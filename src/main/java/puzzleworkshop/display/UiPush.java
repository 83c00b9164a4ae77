package puzzleworkshop.display;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.UIDetachedException;
import com.vaadin.flow.server.Command;
import java.util.concurrent.atomic.AtomicBoolean;

/** Brings news from other threads to an open screen. A screen that has been closed meanwhile is left alone. */
public final class UiPush {

    private UiPush() {}

    /** Runs the command on the screen; nothing happens when nobody looks at it any more. */
    public static void tell(UI ui, Command command) {
        try {
            ui.access(command);
        } catch (UIDetachedException closed) {
            // Closed between the news and its telling: there is nobody to tell.
        }
    }

    /** A listener that shows the screen anew; several pieces of news before it has come to that are shown once. */
    public static Runnable refreshing(UI ui, Runnable show) {
        AtomicBoolean waiting = new AtomicBoolean();
        return () -> {
            if (waiting.compareAndSet(false, true)) {
                tell(ui, () -> {
                    waiting.set(false);
                    show.run();
                });
            }
        };
    }
}
