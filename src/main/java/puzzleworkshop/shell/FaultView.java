package puzzleworkshop.shell;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.BeforeEnterEvent;
import com.vaadin.flow.router.ErrorParameter;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.HasErrorParameter;
import com.vaadin.flow.server.auth.AnonymousAllowed;
import jakarta.servlet.http.HttpServletResponse;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Refused;

/** A page that could not be shown: a sentence and the fault's mark; a refusal says itself. */
@AnonymousAllowed
class FaultView extends Div implements HasErrorParameter<Exception>, HasDynamicTitle {

    private final transient Formatter figures;

    FaultView(Formatter figures) {
        this.figures = figures;
        addClassName("pw-page");
    }

    @Override
    public int setErrorParameter(BeforeEnterEvent event, ErrorParameter<Exception> parameter) {
        add(new H1(getTranslation("fault.page.title")));
        if (parameter.getException() instanceof Refused refused) {
            add(new Paragraph(figures.say(refused)), home());
            return HttpServletResponse.SC_CONFLICT;
        }
        Fault fault = Fault.log("page /" + event.getLocation().getPath(), parameter.getCaughtException());
        add(new Paragraph(getTranslation("fault.page", fault.mark())), home());
        return HttpServletResponse.SC_INTERNAL_SERVER_ERROR;
    }

    @Override
    public String getPageTitle() {
        return getTranslation("fault.page.title");
    }

    private Anchor home() {
        return new Anchor("", getTranslation("fault.home"));
    }
}
