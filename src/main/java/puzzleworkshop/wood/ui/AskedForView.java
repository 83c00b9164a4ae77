package puzzleworkshop.wood.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.RolesAllowed;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.wood.asked.AskedFor;
import puzzleworkshop.wood.asked.AskedSize;
import puzzleworkshop.wood.asked.BoardKindAsked;
import puzzleworkshop.wood.asked.Demand;
import puzzleworkshop.wood.asked.KindAsked;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/**
 * How often each size of blank is asked for, and on which boards: what the orders teach, with its uncertainty, and the owner's word
 * where it differs. Saving one row leaves what was typed in the others.
 */
@Route("asked-for")
@RolesAllowed("OWNER")
@StyleSheet("context://wood.css")
public class AskedForView extends Div implements HasDynamicTitle {

    private static final int MOST_SHOWN = 100;

    /** A season is worth a word from so much more than now. */
    private static final double MUCH_MORE = 1.25;

    private final transient AskedFor asked;
    private final transient SignedIn who;
    private final transient Workshop workshop;
    private final transient Formatter figures;
    private final Div list = new Div();
    private final transient Map<Size, Div> rows = new HashMap<>();
    private double most = 1;

    public AskedForView(AskedFor asked, SignedIn who, Workshop workshop, Formatter figures) {
        this.asked = asked;
        this.who = who;
        this.workshop = workshop;
        this.figures = figures;
        addClassName("pw-page");
        PageHead head = new PageHead(
                getTranslation("wood.asked.title"),
                new Paragraph(getTranslation("wood.asked.lead")),
                new Anchor("wood", getTranslation("wood.title")));
        list.addClassName("wood-asked");
        add(head, kinds(), new PageSection(getTranslation("wood.asked.sizes"), list, more()));
        List<AskedSize> sizes = asked.sizes();
        most = sizes.stream()
                .mapToDouble(size -> Math.max(size.perWeek(), size.learned().high()))
                .max()
                .orElse(1);
        sizes.stream().limit(MOST_SHOWN).forEach(this::show);
    }

    private Div kinds() {
        PageSection section = new PageSection(getTranslation("wood.asked.kinds"));
        List<KindAsked> kinds = asked.kinds();
        if (kinds.isEmpty()) {
            section.add(new Paragraph(getTranslation("wood.asked.kinds.none")));
        }
        for (KindAsked kind : kinds) {
            Div row = new Div();
            row.addClassName("wood-asked-kind");
            fill(row, kind);
            section.add(row);
        }
        return section;
    }

    private void fill(Div row, KindAsked kind) {
        BoardKindAsked board = kind.kind();
        String named = asked.name(board) + ", " + figures.length(board.thickness());
        Span name = new Span(named);
        name.addClassName("wood-strong");
        row.removeAll();
        row.add(
                name,
                said(kind.learned()),
                new RateField(
                        figures,
                        named,
                        kind.corrected(),
                        rate -> asked.correct(board, rate, who.name()),
                        () -> asked.uncorrect(board),
                        () -> asked.kinds().stream()
                                .filter(one -> one.kind().equals(board))
                                .findFirst()
                                .ifPresent(now -> fill(row, now))));
    }

    private Span said(Demand.Learned learned) {
        String words = figures.text(
                learned.trend() ? "wood.asked.row.trend" : "wood.asked.row",
                figures.number(learned.perWeek(), 2),
                figures.number(learned.low(), 2),
                figures.number(learned.high(), 2),
                learned.seen());
        Span said = new Span(season(learned).map(more -> words + "; " + more).orElse(words));
        said.addClassName("pw-small");
        return said;
    }

    /** The week to come in which much more is asked for than now. */
    private Optional<String> season(Demand.Learned learned) {
        List<Double> weeks = learned.toCome();
        double highest = Collections.max(weeks);
        int week = IntStream.range(0, weeks.size())
                .filter(i -> weeks.get(i) == highest)
                .findFirst()
                .orElse(0);
        return highest < MUCH_MORE * learned.perWeek()
                ? Optional.empty()
                : Optional.of(figures.text(
                        "wood.asked.row.season",
                        figures.number(highest, 2),
                        figures.day(workshop.today().plusWeeks(week))));
    }

    @Override
    public String getPageTitle() {
        return getTranslation("wood.asked.title");
    }

    /** In its row; a size that came anew gets one. */
    private void show(AskedSize size) {
        Div row = rows.computeIfAbsent(size.size(), one -> {
            Div made = new Div();
            made.addClassName("wood-asked-row");
            list.add(made);
            return made;
        });
        String named = figures.size(size.size());
        Span name = new Span(named);
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
        row.removeAll();
        row.add(
                name,
                bar,
                said(size.learned()),
                new RateField(
                        figures,
                        named,
                        size.corrected(),
                        rate -> asked.correct(size.size(), rate, who.name()),
                        () -> asked.uncorrect(size.size()),
                        () -> refresh(size.size())));
    }

    private void refresh(Size size) {
        asked.sizes().stream()
                .filter(one -> one.size().equals(size))
                .findFirst()
                .ifPresentOrElse(this::show, () -> list.remove(rows.remove(size)));
    }

    /** A size that no order has taught yet. */
    private Div more() {
        LengthField across = new LengthField(getTranslation("wood.asked.more.across"), figures.units());
        LengthField down = new LengthField(getTranslation("wood.asked.more.down"), figures.units());
        NumberField rate = new NumberField(getTranslation("wood.asked.own"));
        Button add = new Button(getTranslation("wood.asked.more.add"), event -> {
            boolean done = Feedback.unlessRefused(figures, "wood.asked.saved", () -> {
                if (across.getValue() == null || down.getValue() == null) {
                    throw new Refused("wood.asked.more.size");
                }
                if (rate.isInvalid() || rate.getValue() == null) {
                    throw new Refused("wood.asked.rate");
                }
                Size size = new Size(across.getValue(), down.getValue());
                asked.correct(size, rate.getValue(), who.name());
                asked.sizes().stream()
                        .filter(one -> one.size().area().equals(size.area()))
                        .forEach(this::show);
            });
            if (done) {
                across.clear();
                down.clear();
                rate.clear();
            }
        });
        add.addThemeVariants(ButtonVariant.SMALL);
        Div fields = new Div(across, down, rate, add);
        fields.addClassName("wood-fields");
        Div form = new Div(new H3(getTranslation("wood.asked.more")), fields);
        form.addClassName("wood-more");
        return form;
    }

    private static String percent(double share) {
        return Math.clamp(100 * share, 0, 100) + "%";
    }
}
