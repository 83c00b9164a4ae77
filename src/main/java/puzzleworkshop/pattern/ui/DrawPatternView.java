package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H1;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.progressbar.ProgressBar;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.data.value.ValueChangeMode;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.Optional;
import java.util.random.RandomGenerator;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.LengthField;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternCache;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pattern.smallparts.SmallParts;
import puzzleworkshop.pattern.smallparts.SmallPartsVerdict;
import puzzleworkshop.workshop.Workshop;

/** Draws a pattern without an order: to try sizes and styles, to place a heart or a letter, to take the cut files. */
@Route("draw-pattern")
@Menu(title = "pattern.draw.title", order = 62)
@PermitAll
@StyleSheet("context://pattern.css")
public class DrawPatternView extends Div implements HasDynamicTitle {

    private static final Logger LOG = LoggerFactory.getLogger(DrawPatternView.class);

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
    private final ShapeChoice shape;
    private final Paragraph refusal = new Paragraph();
    private final ProgressBar working = new ProgressBar();
    private final PatternDrawing drawing = new PatternDrawing();
    private final PatternFacts facts;
    private final transient Length smallest;
    private int asked;

    public DrawPatternView(PatternCache shelf, Workshop workshop, Formatter figures) {
        this.shelf = shelf;
        this.smallest = workshop.tradeNumbers().smallestPiece();
        this.figures = figures;
        addClassName("pw-page");
        width = length("pattern.draw.width", 200);
        height = length("pattern.draw.height", 300);
        thickness = length("pattern.draw.thickness", PatternSpec.USUAL_THICKNESS.mm());
        shape = new ShapeChoice(figures, this::redraw, this::refuse);
        facts = new PatternFacts(figures);
        Div head = new Div(
                new H1(getTranslation("pattern.draw.title")), new Paragraph(getTranslation("pattern.draw.lead")));
        head.addClassName("pw-page-head");
        Div choices = new Div(fields(), shape, working, refusal);
        choices.addClassName("pw-section");
        Div drawn = new Div(drawing);
        drawn.addClassNames("pw-section", "pattern-draw-drawing");
        Div result = new Div(drawn, facts);
        result.addClassName("pattern-check-result");
        refusal.addClassName("pw-note");
        refusal.getElement().setAttribute("data-kind", "bad");
        refusal.getElement().setAttribute("role", "alert");
        working.setIndeterminate(true);
        add(head, choices, result);
        redraw();
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
        outline.setItems(PuzzleEdge.Kind.values());
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

    /** Off the screen's thread; when the wishes changed meanwhile, only the last answer is shown. */
    private void redraw() {
        int mine = ++asked;
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
        UI ui = UI.getCurrent();
        IntendedAge intended = age.getValue();
        UiPush.beside("pattern", () -> {
            try {
                CutPattern pattern = shelf.of(spec);
                SmallPartsVerdict verdict = SmallParts.judge(pattern, intended);
                UiPush.tell(ui, () -> answer(mine, () -> show(pattern, verdict)));
            } catch (Refused refused) {
                UiPush.tell(ui, () -> answer(mine, () -> refuse(figures.say(refused))));
            } catch (RuntimeException fault) {
                LOG.error("No pattern could be drawn for {}", spec, fault);
                UiPush.tell(ui, () -> answer(mine, () -> refuse(getTranslation("pattern.draw.fault"))));
            }
        });
    }

    private void answer(int to, Runnable show) {
        if (to == asked) {
            show.run();
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
        return PatternSpec.of(size, PieceGrid.nearest(size, pieces.getValue(), smallest), seed.getValue())
                .withStyle(style.getValue())
                .withOutline(PuzzleEdge.usual(outline.getValue()))
                .withThickness(thickness.getValue())
                .withShapes(shape.shapes(size));
    }

    private static boolean isLength(LengthField field) {
        return Optional.ofNullable(field.getValue()).filter(Length::isPositive).isPresent();
    }

    private void show(CutPattern pattern, SmallPartsVerdict verdict) {
        refuse("");
        drawing.show(pattern, "");
        facts.show(pattern, verdict);
    }

    private void refuse(String sentence) {
        working.setVisible(false);
        refusal.setText(sentence);
        refusal.setVisible(!sentence.isEmpty());
    }
}
