package puzzleworkshop.shell;

import com.vaadin.flow.server.ServiceInitEvent;
import com.vaadin.flow.server.VaadinServiceInitListener;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.Formatter;

/** What stands there until a page has come: over a slow line its scripts take seconds, and an empty page looks broken. */
@Component
class PageComing implements VaadinServiceInitListener {

    private final transient Formatter figures;

    PageComing(Formatter figures) {
        this.figures = figures;
    }

    @Override
    public void serviceInit(ServiceInitEvent event) {
        event.addIndexHtmlRequestListener(response -> response.getDocument()
                .body()
                .appendElement("p")
                .addClass("pw-coming")
                .attr("role", "status")
                .text(figures.text("shell.coming")));
    }
}
