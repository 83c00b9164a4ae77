package puzzleworkshop.workshop.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Nav;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.BeforeEvent;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.HasUrlParameter;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.NotFoundException;
import com.vaadin.flow.router.OptionalParameter;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.RolesAllowed;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.workshop.Workshop;

/**
 * Everything that is set once, one part at a time: the workshop's own, and what other rooms add. A part's address is its
 * first heading in small letters (set-up/working-hours).
 */
@Route("set-up")
@Menu(title = "workshop.set-up", order = 90)
@RolesAllowed("OWNER")
public class SetUpView extends Div implements HasDynamicTitle, HasUrlParameter<String> {

    /** @param room what this part stands in, together with other parts of the same room; often the part itself */
    private record Part(String address, String title, Component room, Component content, Anchor way) {}

    private final List<Part> parts = new ArrayList<>();
    private String title;

    public SetUpView(Workshop workshop, Formatter figures, List<SetUpSection> sections, List<OverhangUse> uses) {
        addClassName("pw-page");
        title = getTranslation("workshop.set-up");
        PageHead head = new PageHead(title, new Paragraph(getTranslation("workshop.set-up.lead")));
        Nav ways = new Nav();
        ways.setAriaLabel(getTranslation("workshop.set-up.ways"));
        ways.addClassName("workshop-ways");
        add(head, ways);
        Stream.concat(
                        Stream.of(
                                new ProfileForm(workshop, figures),
                                new TradeNumbersForm(workshop, figures, uses),
                                new StageStandardsForm(workshop, figures)),
                        sections.stream()
                                .sorted(Comparator.comparingInt(SetUpSection::place))
                                .map(SetUpSection::show))
                .forEach(room -> {
                    List<Component> several =
                            room.getChildren().filter(SetUpView::isHeaded).toList();
                    (several.size() > 1 ? several : List.of(room)).forEach(content -> {
                        Part part = part(room, content);
                        parts.add(part);
                        ways.add(part.way);
                    });
                    add(room);
                });
    }

    private Part part(Component room, Component content) {
        String words = heading(content).orElse(title);
        String address =
                words.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        return new Part(address, words, room, content, new Anchor("set-up/" + address, words));
    }

    /** Without a part the first one is shown. */
    @Override
    public void setParameter(BeforeEvent event, @OptionalParameter String address) {
        Part chosen = address == null
                ? parts.getFirst()
                : parts.stream()
                        .filter(part -> part.address.equals(address))
                        .findFirst()
                        .orElseThrow(NotFoundException::new);
        for (Part part : parts) {
            part.room.setVisible(part.room == chosen.room);
            part.way.getElement().removeAttribute("aria-current");
        }
        for (Part part : parts) {
            if (part.room == chosen.room) {
                part.content.setVisible(part == chosen);
            }
        }
        chosen.way.getElement().setAttribute("aria-current", "page");
        // on a phone the ways stand in one line, and the one that is open may lie beyond its end
        chosen.way
                .getElement()
                .executeJs("const bar = this.parentElement;bar.scrollLeft = this.offsetLeft - bar.offsetLeft -"
                        + " (bar.clientWidth - this.clientWidth) / 2");
        title = getTranslation("workshop.set-up")
                + (address == null || chosen == parts.getFirst() ? "" : ": " + chosen.title);
    }

    /** The part itself has a heading; what stands about it may be larger. */
    private static boolean isHeaded(Component part) {
        return part.getChildren().anyMatch(H2.class::isInstance);
    }

    private static Optional<String> heading(Component part) {
        return part instanceof H2 heading
                ? Optional.of(heading.getText()).filter(text -> !text.isBlank())
                : part.getChildren()
                        .map(SetUpView::heading)
                        .flatMap(Optional::stream)
                        .findFirst();
    }

    @Override
    public String getPageTitle() {
        return title;
    }
}
