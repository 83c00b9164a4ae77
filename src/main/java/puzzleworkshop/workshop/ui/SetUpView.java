package puzzleworkshop.workshop.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
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
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
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

    /** @param way to it, in the row of all parts */
    private record Part(String address, String title, SetUpPart made, Anchor way) {}

    private final List<Part> parts = new ArrayList<>();
    /** What was opened; it stays, so that nothing typed is lost on the way to another part and back. */
    private final Map<Part, Component> opened = new HashMap<>();

    private String title;

    public SetUpView(Workshop workshop, Formatter figures, List<SetUpSection> sections, List<OverhangUse> uses) {
        addClassName("pw-page");
        title = getTranslation("workshop.set-up");
        Nav ways = new Nav();
        ways.setAriaLabel(getTranslation("workshop.set-up.ways"));
        ways.addClassName("workshop-ways");
        add(new PageHead(title, new Paragraph(getTranslation("workshop.set-up.lead"))), ways);
        Stream.concat(
                        Stream.of(
                                new SetUpPart("workshop.profile", () -> new ProfileForm(workshop, figures)),
                                new SetUpPart("workshop.trade", () -> new TradeNumbersForm(workshop, figures, uses)),
                                new SetUpPart("workshop.standard", () -> new StageStandardsForm(workshop, figures))),
                        sections.stream()
                                .sorted(Comparator.comparingInt(SetUpSection::place))
                                .flatMap(section -> section.parts().stream()))
                .map(this::part)
                .forEach(part -> {
                    parts.add(part);
                    ways.add(part.way);
                });
    }

    private Part part(SetUpPart made) {
        String words = getTranslation(made.titleKey());
        String address =
                words.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        return new Part(address, words, made, new Anchor("set-up/" + address, words));
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
        opened.computeIfAbsent(chosen, part -> {
            Component content = part.made.content().get();
            add(content);
            return content;
        });
        opened.forEach((part, content) -> content.setVisible(part == chosen));
        parts.forEach(part -> part.way.getElement().removeAttribute("aria-current"));
        chosen.way.getElement().setAttribute("aria-current", "page");
        // on a phone the ways stand in one line, and the one that is open may lie beyond its end
        chosen.way
                .getElement()
                .executeJs("const bar = this.parentElement;bar.scrollLeft = this.offsetLeft - bar.offsetLeft -"
                        + " (bar.clientWidth - this.clientWidth) / 2");
        title = getTranslation("workshop.set-up")
                + (address == null || chosen == parts.getFirst() ? "" : ": " + chosen.title);
    }

    @Override
    public String getPageTitle() {
        return title;
    }
}
