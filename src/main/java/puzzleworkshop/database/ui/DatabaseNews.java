package puzzleworkshop.database.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.notification.Notification;
import com.vaadin.flow.server.ServiceInitEvent;
import com.vaadin.flow.server.VaadinServiceInitListener;
import com.vaadin.flow.server.VaadinSession;
import java.time.Instant;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import puzzleworkshop.database.EmbeddedServer;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.workshop.SignedIn;

/** Tells an owner, once a session, that the database stopped by itself and was started again: a disk may be full. */
@Component
class DatabaseNews implements VaadinServiceInitListener {

    private static final String TOLD = DatabaseNews.class.getName();

    private final transient ObjectProvider<EmbeddedServer> server;
    private final transient SignedIn signedIn;
    private final transient Formatter figures;

    DatabaseNews(ObjectProvider<EmbeddedServer> server, SignedIn signedIn, Formatter figures) {
        this.server = server;
        this.signedIn = signedIn;
        this.figures = figures;
    }

    @Override
    public void serviceInit(ServiceInitEvent event) {
        event.getSource().addUIInitListener(opened -> opened.getUI().addAfterNavigationListener(navigated -> tell()));
    }

    private void tell() {
        EmbeddedServer own = server.getIfAvailable();
        if (own == null || own.startedAgain().isEmpty() || !signedIn.isOwner()) {
            return;
        }
        Instant when = own.startedAgain().get();
        VaadinSession session = VaadinSession.getCurrent();
        if (when.equals(session.getAttribute(TOLD))) {
            return;
        }
        session.setAttribute(TOLD, when);
        Notification card = new Notification();
        card.setPosition(Notification.Position.TOP_CENTER);
        card.setDuration(0);
        Button seen = new Button(figures.text("database.started-again.seen"), click -> card.close());
        card.add(new Div(new Paragraph(figures.text("database.started-again", figures.moment(when))), seen));
        card.open();
    }
}
