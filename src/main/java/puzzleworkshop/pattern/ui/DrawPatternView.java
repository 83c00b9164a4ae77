package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.progressbar.ProgressBar;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.tabs.Tab;
import com.vaadin.flow.component.tabs.Tabs;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.data.value.ValueChangeMode;
import com.vaadin.flow.router.BeforeEvent;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.HasUrlParameter;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.OptionalParameter;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.time.Duration;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.function.BooleanSupplier;
import java.util.random.RandomGenerator;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.cutfiles.writing.CutHeat;
import puzzleworkshop.cutfiles.writing.CutPace;
import puzzleworkshop.cutfiles.writing.CutPlan;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.LatestAnswer;
import puzzleworkshop.display.TabRow;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.display.progress.WorkingBar;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pattern.edges.PieceLikeness;
import puzzleworkshop.pattern.mesh.KnobRoom;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.pattern.smallparts.SmallParts;
import puzzleworkshop.pattern.smallparts.SmallPartsVerdict;
import puzzleworkshop.workshop.Workshop;

/**
 * Draws a pattern without an order: to try sizes, styles and ways to cut, each on a page of its own with size, time and
 * price beside it, to take the cut files or make an order of it.
 */
@Route("draw-pattern")
@Menu(title = "pattern.draw.title", order = 62)
@PermitAll
@StyleSheet("context://pattern.css")
public class DrawPatternView extends Div implements HasDynamicTitle, HasUrlParameter<String> {

    private static final Logger LOG = LoggerFactory.getLogger(DrawPatternView.class);
    private static final Duration TYPING = Duration.ofMillis(150);
    private static final Common FOR_CHILDREN = new Common(8, IntendedAge.FROM_3);

    private final transient PatternCache shelf;
    private final transient Formatter figures;
    private final LengthField width;
    private final LengthField height;
    private final LengthField thickness;
    private final IntegerField pieces = new IntegerField();
    private final IntegerField seed = new IntegerField();
    private final Select<CutStyle> style = new Select<>();
    private final Select<PuzzleEdge.Kind> outline = new Select<>();
    private final Select<IntendedAge> age = new Select<>();
    private final transient SketchDesk desk;
    private final Tabs ways = new TabRow();
    private final Map<CutWay, Tab> tabs = new EnumMap<>(CutWay.class);
    private final Div wayPlace = new Div();
    private final Div result = new Div();
    private final Paragraph refusal = new Paragraph();
    private final ProgressBar working = new WorkingBar();
    private final PatternDrawing drawing = new PatternDrawing();
    private final PatternFacts facts;
    private final StyleComparison styles;
    private final transient Length smallest;
    private final transient LatestAnswer<Drawn> drawn = new LatestAnswer<>(TYPING);
    private final transient LatestAnswer<SketchDesk.Priced> priced = new LatestAnswer<>(Duration.ZERO);
    private final transient LatestAnswer<Compared> compared = new LatestAnswer<>(Duration.ZERO);
    private final transient LatestAnswer<CutHeat> warm = new LatestAnswer<>(Duration.ZERO);
    /** What was typed on each page stays when another is looked at. */
    private final Map<CutWay, WayFields> pages = new EnumMap<>(CutWay.class);

    private final transient Map<Boolean, Common> typedForChildren = new HashMap<>();
    private CutWay way = CutWay.PLAIN;
    private WayFields wayFields;

    private record Drawn(CutPattern pattern, SmallPartsVerdict verdict) {}

    private record Compared(KnobRoom room, PieceLikeness likeness) {}

    /** What children's puzzles have otherwise than all others. */
    private record Common(Integer pieces, IntendedAge age) {}

    public DrawPatternView(PatternCache shelf, Workshop workshop, Formatter figures, SketchDesk desk) {
        this.shelf = shelf;
        this.desk = desk;
        this.smallest = workshop.tradeNumbers().smallestPiece();
        this.figures = figures;
        addClassName("pw-page");
        width = length("pattern.draw.width", 200);
        height = length("pattern.draw.height", 300);
        thickness = length("pattern.draw.thickness", PatternSpec.USUAL_THICKNESS.mm());
        facts = new PatternFacts(figures);
        wayFields = wayFields(way);
        drawing.onTap(this::tapped);
        PageHead head =
                new PageHead(getTranslation("pattern.draw.title"), new Paragraph(getTranslation("pattern.draw.lead")));
        for (CutWay each : CutWay.values()) {
            Tab tab = new Tab(getTranslation("pattern.way." + each.name()));
            tabs.put(each, tab);
            ways.add(tab);
        }
        ways.addSelectedChangeListener(event -> {
            if (event.isFromClient()) {
                tabs.forEach((each, tab) -> {
                    if (tab == event.getSelectedTab()) {
                        UI.getCurrent().navigate(DrawPatternView.class, each.word());
                    }
                });
            }
        });
        Div choices = new Div(ways, wayPlace, fields(), working, refusal);
        choices.addClassName("pw-section");
        Div drawn = new Div(drawing);
        drawn.addClassNames("pw-section", "pattern-draw-drawing");
        result.add(drawn, facts);
        result.addClassName("pattern-check-result");
        refusal.addClassName("pw-note");
        refusal.getElement().setAttribute("data-kind", "bad");
        refusal.getElement().setAttribute("role", "alert");
        working.setIndeterminate(true);
        styles = new StyleComparison(shelf, figures);
        add(head, choices, result, styles);
    }

    /** The way to cut; without one, rows and columns alone. */
    @Override
    public void setParameter(BeforeEvent event, @OptionalParameter String word) {
        boolean wereChildren = way == CutWay.CHILDREN;
        way = CutWay.of(word == null ? "" : word).orElse(CutWay.PLAIN);
        ways.setSelectedTab(tabs.get(way));
        wayFields = wayFields(way);
        wayPlace.removeAll();
        wayPlace.add(wayFields);
        outline.setVisible(way != CutWay.ROUND && way != CutWay.HEART);
        if (wereChildren != (way == CutWay.CHILDREN)) {
            typedForChildren.put(wereChildren, new Common(pieces.getValue(), age.getValue()));
            Common now = typedForChildren.getOrDefault(!wereChildren, FOR_CHILDREN);
            pieces.setValue(now.pieces());
            age.setValue(now.age());
        }
        redraw();
    }

    private WayFields wayFields(CutWay of) {
        return pages.computeIfAbsent(of, each -> new WayFields(each, figures, this::redraw, this::refuse));
    }

    private void tapped(Point where) {
        if (isLength(width) && isLength(height)) {
            wayFields.tapped(where, new Size(width.getValue(), height.getValue()));
        }
    }

    @Override
    public String getPageTitle() {
        return getTranslation("pattern.draw.title");
    }

    private LengthField length(String label, double mm) {
        LengthField field = new LengthField(getTranslation(label), figures.units());
        field.setValue(Length.mm(mm));
        field.addValueChangeListener(event -> redraw());
        return field;
    }

    private Div fields() {
        pieces.setLabel(getTranslation("pattern.draw.pieces"));
        pieces.setMin(PieceGrid.FEWEST_PIECES);
        pieces.setMax(PieceGrid.MOST_PIECES);
        pieces.setValue(48);
        pieces.setValueChangeMode(ValueChangeMode.LAZY);
        pieces.addValueChangeListener(event -> redraw());
        seed.setLabel(getTranslation("pattern.draw.seed"));
        seed.setHelperText(getTranslation("pattern.draw.seed.help"));
        seed.setValue(RandomGenerator.getDefault().nextInt(1, 1_000_000));
        seed.setValueChangeMode(ValueChangeMode.LAZY);
        seed.addValueChangeListener(event -> redraw());
        style.setLabel(getTranslation("pattern.draw.style"));
        style.setItems(CutStyle.values());
        style.setItemLabelGenerator(each -> getTranslation("pattern.style." + each.name()));
        style.setValue(CutStyle.KNOBS);
        style.addValueChangeListener(event -> redraw());
        outline.setLabel(getTranslation("pattern.draw.outline"));
        outline.setItems(PuzzleEdge.Kind.SQUARE, PuzzleEdge.Kind.ROUNDED, PuzzleEdge.Kind.WAVY);
        outline.setItemLabelGenerator(each -> getTranslation("pattern.outline." + each.name()));
        outline.setValue(PuzzleEdge.Kind.SQUARE);
        outline.addValueChangeListener(event -> redraw());
        age.setLabel(getTranslation("pattern.draw.age"));
        age.setItems(IntendedAge.values());
        age.setItemLabelGenerator(each -> getTranslation("pattern.age." + each.name()));
        age.setValue(IntendedAge.FROM_6);
        age.addValueChangeListener(event -> redraw());
        Button other = new Button(
                getTranslation("pattern.draw.other"),
                event -> seed.setValue(RandomGenerator.getDefault().nextInt(1, 1_000_000)));
        Div fields = new Div(width, height, thickness, pieces, style, outline, age, seed, other);
        fields.addClassName("pattern-choices");
        return fields;
    }

    /** Beside the screen; of wishes that changed meanwhile only the last is drawn to the end. */
    private void redraw() {
        drawn.forget();
        priced.forget();
        compared.forget();
        warm.forget();
        PatternSpec spec;
        try {
            spec = spec();
        } catch (Refused refused) {
            refuse(figures.say(refused));
            return;
        }
        if (spec == null) {
            refuse(getTranslation("pattern.draw.incomplete"));
            return;
        }
        working.setVisible(true);
        IntendedAge intended = age.getValue();
        drawn.ask(outdated -> draw(spec, intended, outdated), answer -> show(answer, intended), this::failed);
    }

    private Drawn draw(PatternSpec spec, IntendedAge intended, BooleanSupplier outdated) {
        CutPattern pattern = shelf.of(spec);
        if (outdated.getAsBoolean()) {
            throw new CancellationException();
        }
        return new Drawn(pattern, SmallParts.judge(pattern, intended));
    }

    private void show(Drawn answer, IntendedAge intended) {
        CutPattern pattern = answer.pattern();
        refuse("");
        drawing.show(pattern, "");
        facts.show(pattern, answer.verdict());
        styles.take(pattern.spec());
        priced.ask(
                outdated -> desk.price(pattern.spec(), intended),
                price -> {
                    facts.show(price, () -> desk.order(pattern.spec(), intended));
                    warmth(pattern);
                },
                this::failed);
        compared.ask(
                outdated -> new Compared(KnobRoom.of(pattern.spec()), PieceLikeness.of(pattern)),
                likeness -> facts.show(likeness.room(), likeness.likeness()),
                this::failed);
    }

    private void warmth(CutPattern pattern) {
        CutPace pace = facts.pace();
        warm.ask(outdated -> shelf.heat(pattern.spec(), CutPlan.Sequence.INNER_FIRST, pace), facts::show, this::failed);
    }

    private void failed(RuntimeException fault) {
        if (fault instanceof Refused refused) {
            refuse(figures.say(refused));
        } else {
            LOG.error("No pattern could be drawn", fault);
            refuse(getTranslation("pattern.draw.fault"));
        }
    }

    private PatternSpec spec() {
        if (!isLength(width)
                || !isLength(height)
                || !isLength(thickness)
                || pieces.getValue() == null
                || seed.getValue() == null) {
            return null;
        }
        Size size = new Size(width.getValue(), height.getValue());
        PuzzleEdge edge = PuzzleEdge.usual(
                switch (way) {
                    case ROUND -> PuzzleEdge.Kind.ROUND;
                    case HEART -> PuzzleEdge.Kind.HEART;
                    default -> outline.getValue();
                });
        return wayFields.on(
                PatternSpec.of(size, PieceGrid.within(edge, size, pieces.getValue(), smallest), seed.getValue())
                        .withStyle(style.getValue())
                        .withOutline(edge)
                        .withThickness(thickness.getValue())
                        .withKerf(desk.kerf().orElse(PatternSpec.USUAL_KERF)));
    }

    private static boolean isLength(LengthField field) {
        return Optional.ofNullable(field.getValue()).filter(Length::isPositive).isPresent();
    }

    private void refuse(String sentence) {
        working.setVisible(false);
        refusal.setText(sentence);
        refusal.setVisible(!sentence.isEmpty());
        // what was drawn before is not what the fields say now
        result.setClassName("pattern-stale", !sentence.isEmpty());
    }
}
