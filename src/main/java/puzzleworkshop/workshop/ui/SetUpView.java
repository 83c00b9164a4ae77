package puzzleworkshop.workshop.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.RolesAllowed;
import java.util.Comparator;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.workshop.Workshop;

/** Everything that is set once: the workshop's own part, and below it what other rooms add. */
@Route("set-up")
@Menu(title = "workshop.set-up", order = 90)
@RolesAllowed("OWNER")
public class SetUpView extends Div implements HasDynamicTitle {

    public SetUpView(Workshop workshop, Formatter figures, List<SetUpSection> sections) {
        addClassName("pw-page");
        Div head = new Div(
                new H1(getTranslation("workshop.set-up")), new Paragraph(getTranslation("workshop.set-up.lead")));
        head.addClassName("pw-page-head");
        add(head);
        add(new ProfileForm(workshop, figures));
        add(new TradeNumbersForm(workshop, figures));
        add(new StageStandardsForm(workshop, figures));
        sections.stream()
                .sorted(Comparator.comparingInt(SetUpSection::place))
                .map(SetUpSection::show)
                .forEach(section -> add(section));
    }

    @Override
    public String getPageTitle() {
        return getTranslation("workshop.set-up");
    }
}
