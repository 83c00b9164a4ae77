package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.AttachEvent;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.dependency.JavaScript;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.dom.DomEvent;
import java.util.Optional;
import java.util.function.Consumer;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.fit.RectanglePlaces;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/**
 * A blank on a sheet that can be dragged with mouse or thumb, or moved with the arrow keys: it snaps to borders and
 * corners of where it may lie, and turns red where it does not fit.
 */
@JavaScript("context://sheets-drag.js")
public class MovableBlank extends Div {

    private static final String X = "event.detail.x";
    private static final String Y = "event.detail.y";
    private static final String EXACT = "!!event.detail.exact";

    private final transient Formatter figures;
    private final SheetDrawing drawing;
    private final Span verdict = new Span();
    private final transient Outline outline;
    private final transient Size blank;
    private final String title;
    private final transient Consumer<Optional<Placement>> moved;
    private transient Placement placement;

    /** @param moved told the new place, or nothing when it does not fit there */
    public MovableBlank(
            Formatter figures,
            Outline outline,
            String title,
            Size blank,
            Placement placement,
            Consumer<Optional<Placement>> moved) {
        this.figures = figures;
        this.outline = outline;
        this.title = title;
        this.blank = blank;
        this.placement = placement;
        this.moved = moved;
        this.drawing = new SheetDrawing(figures);
        addClassName("sheets-movable");
        drawing.getElement().setAttribute("tabindex", "0");
        drawing.getElement().setAttribute("role", "application");
        drawing.getElement().setAttribute("aria-label", figures.text("sheets.move.how"));
        verdict.getElement().setAttribute("aria-live", "polite");
        verdict.addClassName("pw-small");
        listen();
        Button turn = new Button(figures.text("sheets.move.turn"), event -> turn());
        Div below = new Div(turn, verdict);
        below.addClassName("pw-row");
        add(drawing, below);
        redraw(true);
    }

    private void listen() {
        drawing.getElement()
                .addEventListener("blank-over", this::over)
                .addEventData(X)
                .addEventData(Y);
        drawing.getElement()
                .addEventListener("blank-dropped", this::dropped)
                .addEventData(X)
                .addEventData(Y)
                .addEventData(EXACT);
    }

    @Override
    protected void onAttach(AttachEvent event) {
        drawing.getElement()
                .executeJs("window.pwSheets ? pwSheets.drag(this) : setTimeout(() => pwSheets.drag(this), 500)");
    }

    private Placement movedBy(DomEvent event) {
        return new Placement(
                placement.x() + event.getEventData().get(X).asDouble(),
                placement.y() + event.getEventData().get(Y).asDouble(),
                placement.degrees());
    }

    private void over(DomEvent event) {
        drawing.getElement()
                .getClassList()
                .set("sheets-outside", !RectanglePlaces.accepts(outline, blank, movedBy(event)));
    }

    private void dropped(DomEvent event) {
        boolean exact = event.getEventData().get(EXACT).asBoolean();
        settle(movedBy(event), exact ? 0 : outline.bounds().longerSide().mm() * 0.025);
    }

    /** Its middle never leaves the sheet's surroundings, whatever the browser says: it could not be caught again. */
    private Placement within(Placement wanted) {
        Point middle = wanted.centre(blank);
        Point low = outline.origin();
        double x = Math.clamp(
                middle.xMm(), low.xMm(), low.xMm() + outline.bounds().width().mm());
        double y = Math.clamp(
                middle.yMm(), low.yMm(), low.yMm() + outline.bounds().height().mm());
        return new Placement(wanted.x() + x - middle.xMm(), wanted.y() + y - middle.yMm(), wanted.degrees());
    }

    private void settle(Placement dropped, double reach) {
        Placement wanted = within(dropped);
        Optional<Placement> rest = reach == 0
                ? Optional.of(wanted).filter(place -> RectanglePlaces.accepts(outline, blank, place))
                : RectanglePlaces.snapped(outline, blank, wanted, Length.mm(reach));
        placement = rest.orElse(wanted);
        redraw(rest.isPresent());
        moved.accept(rest);
    }

    private void turn() {
        double degrees = (placement.degrees() + 90) % 180;
        double middleX = placement.centre(blank).xMm();
        double middleY = placement.centre(blank).yMm();
        Placement turned = new Placement(0, 0, degrees);
        double dx = middleX - turned.centre(blank).xMm();
        double dy = middleY - turned.centre(blank).yMm();
        settle(new Placement(dx, dy, degrees), Math.max(blank.longerSide().mm() * 0.3, 5));
    }

    private void redraw(boolean fits) {
        drawing.show(outline, title, blank, placement, null);
        drawing.getElement().getClassList().set("sheets-outside", !fits);
        verdict.setText(figures.text(fits ? "sheets.move.fits" : "sheets.move.outside"));
    }
}
