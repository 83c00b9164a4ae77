package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.AttachEvent;
import com.vaadin.flow.component.ClientCallable;
import com.vaadin.flow.component.dependency.JavaScript;
import com.vaadin.flow.component.html.Div;
import java.util.Locale;
import java.util.OptionalLong;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Svg;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.printing.GangRuns;
import puzzleworkshop.printing.PrintRun;
import puzzleworkshop.printing.RunItem;
import puzzleworkshop.printing.RunState;
import puzzleworkshop.printing.media.PrintMedium;

/**
 * The sheets of a run, drawn to scale with the pictures on them. While the run may be changed a print can be chosen, by
 * press or key, and drawn to another place, on another sheet as well.
 */
@JavaScript("context://printing.js")
class SheetBoard extends Div {

    /** What the person did. Places are those of sticker and label on the sheet. */
    interface Hands {
        void choose(long item);

        void move(long item, int sheet, Length x, Length y);
    }

    private static final double PIXELS_PER_MM = 1.05;
    private static final int WIDEST = 460;

    private final transient Formatter figures;
    private final transient Hands hands;

    SheetBoard(Formatter figures, Hands hands) {
        this.figures = figures;
        this.hands = hands;
        addClassName("printing-board");
    }

    void show(PrintRun run, OptionalLong chosen) {
        removeAll();
        for (int sheet = 0; sheet < run.sheets(); sheet++) {
            Div drawing = new Div();
            drawing.getElement().setProperty("innerHTML", sheet(run, sheet, chosen));
            Div place = new Div(drawing);
            place.addClassName("printing-sheet");
            double wide = Math.min(WIDEST, run.sheetSize().width().mm() * PIXELS_PER_MM);
            place.getStyle().setWidth(Math.round(wide) + "px");
            Div name = new Div(
                    run.isRoll()
                            ? figures.text("printing.roll", run.length())
                            : figures.text("printing.sheet-of", sheet + 1, run.sheets()));
            name.addClassName("pw-small");
            place.add(name);
            add(place);
        }
        getElement().executeJs("window.puzzleWorkshopPrinting && window.puzzleWorkshopPrinting.redrawn(this)");
    }

    @Override
    protected void onAttach(AttachEvent event) {
        super.onAttach(event);
        getElement().executeJs("window.puzzleWorkshopPrinting.board(this)");
    }

    @ClientCallable
    private void chosen(int item) {
        hands.choose(item);
    }

    @ClientCallable
    private void moved(int item, int sheet, double x, double y) {
        if (Double.isFinite(x) && Double.isFinite(y)) {
            hands.move(item, sheet, Length.mm(x), Length.mm(y));
        }
    }

    private String sheet(PrintRun run, int sheet, OptionalLong chosen) {
        Size size = run.sheetSize();
        double w = size.width().mm();
        double h = size.height().mm();
        String numbers = String.join(
                ", ", run.on(sheet).map(item -> item.order().number()).toList());
        Svg svg = Svg.of(
                -1,
                -1,
                w + 2,
                h + 2,
                figures.text("printing.drawing-title", sheet + 1, run.id()),
                figures.text("printing.drawing-desc", run.on(sheet).count(), numbers));
        svg.rect(0, 0, w, h, "printing-paper");
        double inset = run.medium().margin().mm();
        svg.rect(inset, inset, w - 2 * inset, h - 2 * inset, "printing-printable");
        boolean movable = run.state() == RunState.PROPOSED;
        run.on(sheet).forEach(item -> item(svg, item, movable, chosen.isPresent() && chosen.getAsLong() == item.id()));
        // a group, not one picture: what lies on it is reached by itself and moved with keys
        return svg.markup()
                .replaceFirst("<svg ", "<svg data-sheet='" + sheet + "' ")
                .replaceFirst("role='img'", "role='group'");
    }

    private void item(Svg svg, RunItem item, boolean movable, boolean isChosen) {
        Size sticker = item.sticker();
        double w = sticker.width().mm();
        double h = sticker.height().mm();
        double band = PrintMedium.LABEL.mm();
        double o = item.overhang().mm();
        String label = figures.text(
                item.pinned() ? "printing.item-pinned" : "printing.item-label",
                item.order().number(),
                item.finished());
        String state = (item.pinned() ? " is-pinned" : "") + (isChosen ? " is-chosen" : "") + " is-"
                + item.outcome().name().toLowerCase(Locale.ROOT);
        svg.raw("<g class='printing-item" + state + "' data-item='" + item.id() + "' data-x='"
                + Svg.n(item.x().mm()) + "' data-y='"
                + Svg.n(item.y().mm()) + "'" + (movable ? " tabindex='0' role='button' data-movable='true'" : "")
                + " aria-label='" + Svg.escape(label) + "'>");
        String place = item.turned()
                ? "matrix(0 1 -1 0 " + Svg.n(item.x().mm() + h + band) + " "
                        + Svg.n(item.y().mm()) + ")"
                : "translate(" + Svg.n(item.x().mm()) + " " + Svg.n(item.y().mm()) + ")";
        svg.group("", place);
        svg.rect(0, 0, w, h + band, "printing-label");
        svg.rect(0, 0, w, h, "printing-sticker");
        svg.image(0, 0, w, h, GangRuns.stickerAddress(item.order().id(), item.look()));
        svg.rect(o, o, w - 2 * o, h - 2 * o, "printing-trim");
        svg.text(o + 2, h - o - 3, Math.min(12, w / 7), "start", item.order().number(), "printing-number");
        if (item.pinned()) {
            svg.raw("<g class='printing-pin' transform='translate(" + Svg.n(w - 9) + " 9)'><circle r='5.5'/>"
                    + "<path d='M-2.2 -2.6h4.4M0 -2.6v3.4M-2.6 0.8h5.2M0 0.8v2.6'/></g>");
        }
        svg.rect(0, 0, w, h + band, "printing-frame");
        svg.end().end();
    }
}
