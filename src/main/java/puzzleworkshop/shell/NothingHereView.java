package puzzleworkshop.shell;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.BeforeEnterEvent;
import com.vaadin.flow.router.ErrorParameter;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.HasErrorParameter;
import com.vaadin.flow.router.NotFoundException;
import com.vaadin.flow.server.auth.AnonymousAllowed;
import jakarta.servlet.http.HttpServletResponse;

/** An address that leads nowhere, or nowhere this person may go: both look the same. */
@AnonymousAllowed
class NothingHereView extends Div implements HasErrorParameter<NotFoundException>, HasDynamicTitle {

    NothingHereView() {
        addClassName("pw-page");
    }

    @Override
    public int setErrorParameter(BeforeEnterEvent event, ErrorParameter<NotFoundException> parameter) {
        add(
                new H1(getTranslation("fault.nothing.title")),
                new Paragraph(getTranslation("fault.nothing")),
                new Anchor("", getTranslation("fault.home")),
                new Anchor("orders", getTranslation("fault.orders")));
        return HttpServletResponse.SC_NOT_FOUND;
    }

    @Override
    public String getPageTitle() {
        return getTranslation("fault.nothing.title");
    }
}
