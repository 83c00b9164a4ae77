package puzzleworkshop.wood.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.component.textfield.TextFieldVariant;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.RolesAllowed;
import java.util.List;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.wood.asked.AskedFor;
import puzzleworkshop.wood.asked.AskedSize;
import puzzleworkshop.wood.asked.Demand;
import puzzleworkshop.wood.asked.KindAsked;
import puzzleworkshop.workshop.SignedIn;

/** How often each size of blank is asked for: what the orders teach, with its uncertainty, and the owner's word where it differs. */
@Route("asked-for")
@RolesAllowed("OWNER")
@StyleSheet("context://wood.css")
public class AskedForView extends Div implements HasDynamicTitle {

    private static final int MOST_SHOWN = 100;

    private final transient AskedFor asked;
    private final transient SignedIn who;
    private final transient Formatter figures;
    private final Div list = new Div();

    public AskedForView(AskedFor asked, SignedIn who, Formatter figures) {
        this.asked = asked;
        this.who = who;
        this.figures = figures;
        addClassName("pw-page");
        PageHead head = new PageHead(
                getTranslation("wood.asked.title"),
                new Paragraph(getTranslation("wood.asked.lead")),
                new Anchor("wood", getTranslation("wood.title")));
        list.addClassNames("pw-section", "wood-asked");
        add(head, kinds(), list);
        refresh();
    }

    private Div kinds() {
        PageSection section = new PageSection(getTranslation("wood.asked.kinds"));
        List<KindAsked> kinds = asked.kinds();
        if (kinds.isEmpty()) {
            section.add(new Paragraph(getTranslation("wood.asked.kinds.none")));
        }
        for (KindAsked kind : kinds) {
            Span name = new Span(
                    asked.name(kind.kind()) + ", " + figures.length(kind.kind().thickness()));
            name.addClassName("wood-strong");
            Span said = new Span(words(kind.learned()));
            said.addClassName("pw-small");
            Div row = new Div(name, said);
            row.addClassName("wood-line");
            section.add(row);
        }
        return section;
    }

    private String words(Demand.Learned learned) {
        return figures.text(
                learned.trend() ? "wood.asked.row.trend" : "wood.asked.row",
                figures.number(learned.perWeek(), 2),
                figures.number(learned.low(), 2),
                figures.number(learned.high(), 2),
                learned.seen());
    }

    @Override
    public String getPageTitle() {
        return getTranslation("wood.asked.title");
    }

    private void refresh() {
        list.removeAll();
        List<AskedSize> sizes = asked.sizes();
        double most = sizes.stream()
                .mapToDouble(size -> Math.max(size.perWeek(), size.learned().high()))
                .max()
                .orElse(1);
        sizes.stream().limit(MOST_SHOWN).forEach(size -> list.add(row(size, Math.max(most, 1e-9))));
    }

    private Div row(AskedSize size, double most) {
        Span name = new Span(figures.size(size.size()));
        name.addClassName("wood-strong");
        Div range = new Div();
        range.addClassName("wood-range");
        range.getStyle().set("left", percent(size.learned().low() / most));
        range.getStyle().set("right", percent(1 - size.learned().high() / most));
        Div mean = new Div();
        mean.addClassName("wood-mean");
        mean.getStyle().set("left", percent(size.perWeek() / most));
        Div bar = new Div(range, mean);
        bar.addClassName("wood-bar");
        Span said = new Span(words(size.learned()));
        said.addClassName("pw-small");
        NumberField own = new NumberField(getTranslation("wood.asked.own"));
        own.addThemeVariants(TextFieldVariant.LUMO_SMALL);
        size.corrected().ifPresent(own::setValue);
        own.setClearButtonVisible(true);
        Button save = new Button(getTranslation("wood.asked.save"), event -> save(size, own));
        save.addThemeVariants(ButtonVariant.SMALL);
        Div correction = new Div(own, save);
        correction.addClassName("wood-correction");
        Div row = new Div(name, bar, said, correction);
        row.addClassName("wood-asked-row");
        return row;
    }

    private void save(AskedSize size, NumberField own) {
        boolean done = Feedback.unlessRefused(figures, "wood.asked.saved", () -> {
            if (own.getValue() == null) {
                asked.uncorrect(size.size());
            } else {
                asked.correct(size.size(), own.getValue(), who.name());
            }
        });
        if (done) {
            refresh();
        }
    }

    private static String percent(double share) {
        return Math.clamp(100 * share, 0, 100) + "%";
    }
}
