package puzzleworkshop.shell;

import com.vaadin.flow.server.CustomizedSystemMessages;
import com.vaadin.flow.server.ServiceInitEvent;
import com.vaadin.flow.server.SystemMessages;
import com.vaadin.flow.server.VaadinServiceInitListener;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.Formatter;

/** What the browser says by itself when the server does not know it any more, or it keeps no cookies. */
@Component
class BrowserMessages implements VaadinServiceInitListener {

    private final transient Formatter figures;

    BrowserMessages(Formatter figures) {
        this.figures = figures;
    }

    @Override
    public void serviceInit(ServiceInitEvent event) {
        event.getSource().setSystemMessagesProvider(asked -> words());
    }

    SystemMessages words() {
        CustomizedSystemMessages words = new CustomizedSystemMessages();
        // The same page is loaded again: who is still known goes on there, everybody else comes to sign-in.
        words.setSessionExpiredURL(null);
        words.setSessionExpiredNotificationEnabled(false);
        words.setCookiesDisabledCaption(figures.text("shell.no-cookies"));
        words.setCookiesDisabledMessage(figures.text("shell.no-cookies.next"));
        words.setInternalErrorCaption(figures.text("shell.stopped"));
        words.setInternalErrorMessage(figures.text("shell.stopped.next"));
        return words;
    }
}
