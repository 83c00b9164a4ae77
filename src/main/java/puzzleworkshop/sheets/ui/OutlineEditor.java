package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.Key;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.details.Details;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.dom.DomEvent;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.geometry.ImpossibleOutline;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;

/**
 * Draws any outline: corners by tapping on a grid, with snapping to the grid and to corners already there, or by a typed
 * length and direction; bad areas after the outer ring is closed; every step can be taken back. What cannot be a board is
 * refused with the spot marked.
 */
public class OutlineEditor extends Div {

    private final transient Formatter figures;
    private final transient DrawnOutline drawn = new DrawnOutline();
    private final SvgBox box = new SvgBox("sheets-editor-box");
    private final LengthField width;
    private final LengthField height;
    private final Select<Integer> grid = new Select<>();
    private final LengthField length;
    private final NumberField angle = new NumberField();
    private final Span hint = new Span();
    private final transient Consumer<Outline> rules;
    private transient Point fault;

    /** @param rules refuses with the spot what is a shape but no board of ours, when the shape is closed */
    public OutlineEditor(Formatter figures, Consumer<Outline> rules) {
        this.figures = figures;
        this.rules = rules;
        this.width = new LengthField(figures.text("sheets.editor.width"), figures.units());
        this.height = new LengthField(figures.text("sheets.editor.height"), figures.units());
        this.length = new LengthField(figures.text("sheets.editor.length"), figures.units());
        addClassName("sheets-editor");
        width.setValue(Length.mm(600));
        height.setValue(Length.mm(400));
        grid.setLabel(figures.text("sheets.editor.grid"));
        grid.setItems(1, 5, 10, 20, 50);
        grid.setItemLabelGenerator(mm -> figures.length(Length.mm(mm)));
        grid.setValue(10);
        width.addValueChangeListener(event -> redraw());
        height.addValueChangeListener(event -> redraw());
        grid.addValueChangeListener(event -> redraw());
        hint.addClassName("pw-soft");
        hint.getElement().setAttribute("aria-live", "polite");
        listen();
        add(typed(), box, hint, steps(), more());
        redraw();
    }

    private void listen() {
        box.getElement()
                .addEventListener("click", this::tapped)
                .addEventData("event.clientX - event.currentTarget.querySelector('svg').getBoundingClientRect().left")
                .addEventData("event.clientY - event.currentTarget.querySelector('svg').getBoundingClientRect().top")
                .addEventData("event.currentTarget.querySelector('svg').getBoundingClientRect().width");
    }

    private void tapped(DomEvent event) {
        double[] numbers = new double[3];
        int i = 0;
        for (String what : List.of(
                "event.clientX - event.currentTarget.querySelector('svg').getBoundingClientRect().left",
                "event.clientY - event.currentTarget.querySelector('svg').getBoundingClientRect().top",
                "event.currentTarget.querySelector('svg').getBoundingClientRect().width")) {
            numbers[i++] = event.getEventData().get(what).asDouble();
        }
        if (numbers[2] < 1) {
            return;
        }
        double rim = rim();
        double mmPerPixel = (canvasWidth() + 2 * rim) / numbers[2];
        double x = numbers[0] * mmPerPixel - rim;
        double y = numbers[1] * mmPerPixel - rim;
        Length far = length.getValue();
        if (far != null && far.isPositive() && drawn.last().isPresent()) {
            Point from = drawn.last().get();
            step(straightened(Math.toDegrees(Math.atan2(y - from.yMm(), x - from.xMm()))));
            length.setValue(null);
            length.getElement().executeJs("this.querySelector('input').focus()");
        } else {
            drawn.corner(snapped(x, y, 14 * mmPerPixel));
            changed();
        }
    }

    /** A tap with a typed length gives the direction only; nearly along the sides of the paper means along them. */
    private static double straightened(double degrees) {
        double square = Math.round(degrees / 90) * 90.0;
        return Math.abs(degrees - square) < 8 ? square : degrees;
    }

    /** A corner already there within reach, else the next crossing of the grid inside the canvas. */
    private Point snapped(double x, double y, double reach) {
        Point at = new Point(x, y);
        Optional<Point> corner = drawn.rings().stream()
                .flatMap(List::stream)
                .filter(spot -> spot.distanceTo(at) < reach)
                .min((a, b) -> Double.compare(a.distanceTo(at), b.distanceTo(at)));
        if (corner.isPresent()) {
            return corner.get();
        }
        double step = grid.getValue();
        return new Point(
                Math.clamp(Math.round(x / step) * step, 0, canvasWidth()),
                Math.clamp(Math.round(y / step) * step, 0, canvasHeight()));
    }

    private Div typed() {
        Div row = new Div(length);
        row.addClassNames("sheets-typed");
        String[] arrows = {"→", "↓", "←", "↑"};
        for (int i = 0; i < 4; i++) {
            double degrees = 90.0 * i;
            Button arrow = new Button(arrows[i], event -> step(degrees));
            arrow.setAriaLabel(figures.text("sheets.editor.go." + i));
            arrow.addClassName("sheets-arrow");
            row.add(arrow);
        }
        return row;
    }

    /** What is rarely changed: the paper, and sides at a measured angle. */
    private Details more() {
        angle.setLabel(figures.text("sheets.editor.angle"));
        angle.setValue(0.0);
        angle.setStep(0.1);
        angle.setSuffixComponent(new Span("°"));
        Button aslant = new Button(
                figures.text("sheets.editor.aslant"), event -> step(angle.getValue() == null ? 0 : angle.getValue()));
        Div row = new Div(angle, aslant, width, height, grid);
        row.addClassName("pw-row");
        return new Details(figures.text("sheets.editor.more"), row);
    }

    private void step(double degrees) {
        Length far = length.getValue();
        if (far == null || !far.isPositive()) {
            length.setInvalid(true);
            length.setErrorMessage(figures.text("sheets.editor.nolength"));
            return;
        }
        length.setInvalid(false);
        if (drawn.last().isEmpty()) {
            drawn.corner(new Point(0, 0));
        }
        Point from = drawn.last().orElse(new Point(0, 0));
        double turn = Math.toRadians(degrees);
        drawn.corner(new Point(
                Math.round((from.xMm() + far.mm() * Math.cos(turn)) * 1000) / 1000.0,
                Math.round((from.yMm() + far.mm() * Math.sin(turn)) * 1000) / 1000.0));
        changed();
    }

    private Div steps() {
        Button undo = new Button(figures.text("sheets.editor.undo"), event -> {
            drawn.undo();
            changed();
        });
        undo.addClickShortcut(Key.KEY_Z, com.vaadin.flow.component.KeyModifier.CONTROL)
                .listenOn(this);
        Button close = new Button(figures.text("sheets.editor.close"), event -> {
            drawn.close();
            changed();
        });
        Button clear = new Button(figures.text("sheets.editor.clear"), event -> {
            drawn.clear();
            changed();
        });
        clear.addThemeVariants(ButtonVariant.TERTIARY);
        Div row = new Div(close, undo, clear);
        row.addClassName("pw-row");
        return row;
    }

    private void changed() {
        fault = null;
        if (drawn.isClosed()) {
            try {
                rules.accept(drawn.outline());
            } catch (ImpossibleOutline impossible) {
                fault = impossible.spot().orElse(null);
                hint.setText(figures.say(impossible));
                redrawKeepingHint();
                return;
            }
        }
        redraw();
    }

    private void redraw() {
        hint.setText(figures.text(
                drawn.isEmpty()
                        ? "sheets.editor.hint.start"
                        : drawn.isClosed()
                                ? "sheets.editor.hint.closed"
                                : drawn.rings().size() > 1 ? "sheets.editor.hint.bad" : "sheets.editor.hint.open"));
        redrawKeepingHint();
    }

    private void redrawKeepingHint() {
        box.draw(new EditorPaper(figures, canvasWidth(), canvasHeight(), rim())
                .draw(drawn, grid.getValue(), Optional.ofNullable(fault), hint.getText()));
    }

    private double rim() {
        return Math.max(canvasWidth(), canvasHeight()) * 0.055;
    }

    private double canvasWidth() {
        return canvas(width, 600);
    }

    private double canvasHeight() {
        return canvas(height, 400);
    }

    /** As typed, but never smaller than what is drawn. */
    private double canvas(LengthField field, double fallback) {
        double typed = field.getValue() == null || !field.getValue().isPositive()
                ? fallback
                : Math.clamp(field.getValue().mm(), 20, 5000);
        double drawnTo = drawn.rings().stream()
                .flatMap(List::stream)
                .mapToDouble(field == width ? Point::xMm : Point::yMm)
                .max()
                .orElse(0);
        return Math.max(typed, drawnTo);
    }

    /** What was drawn, or a refusal that was already shown. */
    public Optional<Outline> outline() {
        if (!drawn.isClosed()) {
            drawn.close();
        }
        try {
            Outline outline = drawn.outline();
            rules.accept(outline);
            return Optional.of(outline);
        } catch (ImpossibleOutline impossible) {
            fault = impossible.spot().orElse(null);
            hint.setText(figures.say(impossible));
            redrawKeepingHint();
            Feedback.tell(figures.say(impossible), true);
            return Optional.empty();
        }
    }

    public void start(Outline outline) {
        drawn.start(outline);
        width.setValue(outline.bounds().width());
        height.setValue(outline.bounds().height());
        changed();
    }

    void clear() {
        drawn.clear();
        changed();
    }
}
