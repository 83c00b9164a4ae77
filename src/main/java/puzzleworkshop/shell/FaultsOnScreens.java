package puzzleworkshop.shell;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.notification.Notification;
import com.vaadin.flow.component.notification.NotificationVariant;
import com.vaadin.flow.server.ErrorEvent;
import com.vaadin.flow.server.ServiceInitEvent;
import com.vaadin.flow.server.VaadinServiceInitListener;
import java.sql.SQLException;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.measure.Refused;

/**
 * What happens when a click ends in an exception: a refusal is said, a fault is logged once and said with its
 * mark. A browser that went away in the middle of an answer is neither.
 */
@Component
class FaultsOnScreens implements VaadinServiceInitListener {

    private static final int READ_MILLISECONDS = 12_000;
    private final transient Formatter figures;

    FaultsOnScreens(Formatter figures) {
        this.figures = figures;
    }

    @Override
    public void serviceInit(ServiceInitEvent event) {
        event.getSource().addSessionInitListener(session -> session.getSession().setErrorHandler(this::happened));
    }

    void happened(ErrorEvent event) {
        Throwable cause = event.getThrowable();
        Refused refused = refusalIn(cause);
        if (refused == null && Fault.isBrowserGone(cause)) {
            return;
        }
        String words = refused != null
                ? figures.say(refused)
                : figures.text("fault.on-screen", Fault.log("a screen", cause).mark());
        UI ui = UI.getCurrent();
        if (ui != null) {
            Notification said = new Notification(words, READ_MILLISECONDS, Notification.Position.BOTTOM_CENTER);
            said.addThemeVariants(refused != null ? NotificationVariant.WARNING : NotificationVariant.ERROR);
            said.setAssertive(true);
            UiPush.tell(ui, said::open);
        }
    }

    private static Refused refusalIn(Throwable thrown) {
        for (Throwable t = thrown; t != null; t = t.getCause()) {
            if (t instanceof Refused refused) {
                return refused;
            }
            // PostgreSQL keeps every character but this one (SQLSTATE 22021, character_not_in_repertoire).
            if (t instanceof SQLException sql && "22021".equals(sql.getSQLState())) {
                return new Refused("fault.unkeepable-character");
            }
        }
        return null;
    }
}
