package puzzleworkshop.workshop.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Nav;
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

    private final Nav ways = new Nav();

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
        ways.setAriaLabel(getTranslation("workshop.set-up.ways"));
        ways.addClassName("workshop-ways");
        getChildren().toList().forEach(this::lead);
        addComponentAtIndex(1, ways);
    }

    /** A way to each heading of a part, however many it has. */
    private void lead(Component part) {
        if (part instanceof H2 heading) {
            String place = "part-" + (ways.getComponentCount() + 1);
            heading.setId(place);
            Anchor way = new Anchor("set-up#" + place, heading.getText());
            // Within the page: the browser goes there by itself.
            way.getElement().setAttribute("router-ignore", true);
            ways.add(way);
        }
        part.getChildren().forEach(this::lead);
    }

    @Override
    public String getPageTitle() {
        return getTranslation("workshop.set-up");
    }
}
