package puzzleworkshop.display;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.UIDetachedException;
import com.vaadin.flow.server.Command;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Predicate;
import org.springframework.security.concurrent.DelegatingSecurityContextRunnable;
import puzzleworkshop.runtime.Broadcaster;
import puzzleworkshop.runtime.Change;

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

    /**
     * Works beside the screen, in the name of whoever sits before it: what they may not see is not worked out for them
     * either.
     */
    public static Thread beside(String name, Runnable work) {
        return Thread.ofVirtual().name(name).start(new DelegatingSecurityContextRunnable(work));
    }

    /**
     * Shows a screen again when something it shows has changed, as long as it is attached. Several changes before it has
     * come to that are shown once; what it has shown by itself meanwhile, it says to the one returned, is not shown again.
     *
     * @param concerns which changes the screen shows
     */
    public static Broadcaster.Listening refresh(
            Component screen, Broadcaster broadcaster, Predicate<Change> concerns, Command show) {
        UI ui = screen.getUI().orElseThrow();
        AtomicBoolean waiting = new AtomicBoolean();
        Broadcaster.Listening listening = broadcaster.listen(concerns, changes -> {
            if (waiting.compareAndSet(false, true)) {
                tell(ui, () -> {
                    waiting.set(false);
                    show.execute();
                });
            }
        });
        screen.addDetachListener(detach -> {
            listening.stop();
            detach.unregisterListener();
        });
        return listening;
    }
}
