package puzzleworkshop.bench.ui.pieces;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.server.streams.DownloadHandler;
import com.vaadin.flow.server.streams.DownloadResponse;
import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import puzzleworkshop.cutfiles.ui.CutFileLinks;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Order;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.Piece;
import puzzleworkshop.pattern.judged.LostPiece;
import puzzleworkshop.pattern.judged.LostPiece.Today;
import puzzleworkshop.pattern.mesh.GridPlaces;
import puzzleworkshop.pattern.ui.PatternDrawing;
import puzzleworkshop.placing.Position;
import puzzleworkshop.sheets.find.Suggestion;

/** Tap the piece on the picture, or name its row and column: cut file, print and a scrap for it. */
@StyleSheet("context://pattern.css")
class PieceAgain extends Div {

    private static final String ACROSS = "(event.clientX - element.querySelector('svg').getBoundingClientRect().left)"
            + " / element.querySelector('svg').getBoundingClientRect().width";
    private static final String DOWN = "(event.clientY - element.querySelector('svg').getBoundingClientRect().top)"
            + " / element.querySelector('svg').getBoundingClientRect().height";
    private static final int FACE_PIXELS = 800;
    private static final double MOST_STRETCH_PERCENT = 2;

    private final transient Order order;
    private final transient CutPattern pattern;
    private final transient PieceAgainParts parts;
    private final transient Formatter figures;
    private final SvgBox drawing = new SvgBox("pattern-drawing");
    private final IntegerField row = new IntegerField();
    private final IntegerField column = new IntegerField();
    private final NumberField across = new NumberField();
    private final NumberField down = new NumberField();
    private final Div result = new Div();
    private final transient Optional<Position> cut;
    private transient Piece chosen;
    private boolean forNothing;

    PieceAgain(Order order, CutPattern pattern, PieceAgainParts parts, Formatter figures) {
        this.order = order;
        this.pattern = pattern;
        this.parts = parts;
        this.figures = figures;
        addClassName("pw-stack");
        drawing.getElement()
                .addEventListener(
                        "click",
                        event -> tapped(
                                event.getEventData().get(ACROSS).asDouble(),
                                event.getEventData().get(DOWN).asDouble()))
                .addEventData(ACROSS)
                .addEventData(DOWN);
        place(row, "bench.again.row", pattern.spec().grid().rows());
        place(column, "bench.again.column", pattern.spec().grid().columns());
        cut = parts.cutOf(order);
        double stretched = cut.filter(Position::followed)
                .map(place -> Math.round(10_000 * (place.place().stretch() - 1)) / 100.0)
                .orElse(0.0);
        stretch(across, "bench.again.across", stretched);
        stretch(down, "bench.again.down", stretched);
        Div fields = new Div(row, column, across, down);
        fields.addClassName("pattern-choices");
        result.addClassName("pw-stack");
        result.getElement().setAttribute("aria-live", "polite");
        add(new Paragraph(figures.text("bench.again.lead")));
        parts.ordered(order)
                .forEach(made -> add(new Anchor(
                        "orders/" + made.number(), figures.text("bench.again.ordered", made.piece(), made.number()))));
        add(drawing, fields);
        cut.ifPresent(place -> add(new SmallText(figures.text(
                "bench.again.from-cut",
                figures.moment(place.at()),
                figures.number(stretched, 2),
                figures.number(place.kerf().mm(), 2)))));
        add(result);
        draw();
    }

    /** The customer pays nothing for the piece unless somebody says so here. */
    void forNothing() {
        forNothing = true;
        show();
    }

    private void place(IntegerField field, String label, int most) {
        field.setLabel(figures.text(label));
        field.setMin(1);
        field.setMax(most);
        field.setStepButtonsVisible(true);
        field.addValueChangeListener(event -> {
            if (event.isFromClient() && row.getValue() != null && column.getValue() != null) {
                chosen = GridPlaces.piece(pattern, row.getValue(), column.getValue())
                        .orElse(null);
                show();
            }
        });
    }

    private void stretch(NumberField field, String label, double percent) {
        field.setLabel(figures.text(label));
        field.setMin(-MOST_STRETCH_PERCENT);
        field.setMax(MOST_STRETCH_PERCENT);
        field.setValue(percent);
        field.addValueChangeListener(event -> show());
    }

    private void tapped(double shareAcross, double shareDown) {
        Size size = pattern.spec().size();
        double stroke = size.longerSide().mm() / 640;
        LostPiece.at(
                        pattern,
                        Point.of(
                                shareAcross * (size.width().mm() + 2 * stroke) - stroke,
                                shareDown * (size.height().mm() + 2 * stroke) - stroke))
                .ifPresent(this::choose);
    }

    /** @param number of the piece in its pattern */
    void choose(int number) {
        choose(pattern.pieces().get(number - 1));
    }

    private void choose(Piece piece) {
        chosen = piece;
        GridPlaces places = GridPlaces.of(pattern);
        row.setValue(places.row(piece));
        column.setValue(places.column(piece));
        show();
    }

    private void draw() {
        drawing.getElement()
                .setProperty(
                        "innerHTML",
                        marked(order, pattern, chosen == null ? Set.of() : Set.of(chosen.number()), figures));
    }

    /** The puzzle's picture with its cut lines, some pieces marked. */
    static String marked(Order order, CutPattern pattern, Set<Integer> numbers, Formatter figures) {
        String face = order.picture().isPresent()
                ? "faces/" + order.id().value() + "/" + order.version() + "/" + FACE_PIXELS + ".jpg"
                : "";
        Svg svg = PatternDrawing.svg(
                pattern, face, figures.text("bench.again.drawing"), figures.text("bench.again.drawing.words"));
        StringBuilder marked = new StringBuilder();
        for (int number : numbers) {
            marked.append("<path class='bench-again-piece' d='")
                    .append(pattern.pieces().get(number - 1).outline().svgPathData())
                    .append("'/>");
        }
        return svg.markup().replace("</svg>", marked + "</svg>");
    }

    private void show() {
        draw();
        result.removeAll();
        if (chosen == null) {
            return;
        }
        Optional<Today> today = today();
        if (today.isEmpty()) {
            result.add(new Paragraph(figures.text("bench.again.stretch.too-much", MOST_STRETCH_PERCENT)));
            return;
        }
        LostPiece lost = LostPiece.of(pattern, chosen.number(), today.get());
        result.add(new Paragraph(figures.text(
                "bench.again.piece",
                chosen.number(),
                figures.size(lost.size()),
                figures.number(today.get().then().orElse(pattern.spec().kerf()).mm(), 2),
                figures.number(today.get().kerf().mm(), 2))));
        String name = order.number() + "-piece-" + chosen.number();
        result.add(row("bench.again.cut", new CutFileLinks(name, () -> lost.plan(parts.margin()))));
        order.picture().ifPresent(framed -> {
            Anchor print = new Anchor(
                    DownloadHandler.fromInputStream(event -> {
                        byte[] bytes = parts.print(order, framed, lost);
                        return new DownloadResponse(
                                new ByteArrayInputStream(bytes), name + ".pdf", "application/pdf", bytes.length);
                    }),
                    "PDF");
            print.getElement().setAttribute("download", name + ".pdf");
            print.addClassName("pattern-link");
            result.add(row("bench.again.print", print));
        });
        result.add(scraps(lost), parts.order(order, chosen.number(), forNothing, this::today));
        SmallText caution = new SmallText(figures.text("bench.again.caution"));
        result.add(caution);
    }

    private Optional<Today> today() {
        double x = Optional.ofNullable(across.getValue()).orElse(0.0);
        double y = Optional.ofNullable(down.getValue()).orElse(0.0);
        if (Math.abs(x) > MOST_STRETCH_PERCENT || Math.abs(y) > MOST_STRETCH_PERCENT) {
            return Optional.empty();
        }
        Length kerf = parts.kerf(order);
        return Optional.of(new Today(kerf, 1 + x / 100, 1 + y / 100, cut.map(Position::kerf)));
    }

    private Div scraps(LostPiece lost) {
        Div list = new Div();
        List<Suggestion> scraps = parts.scraps(order, lost);
        String blank = figures.size(parts.blank(lost));
        list.add(new Paragraph(figures.text(scraps.isEmpty() ? "bench.again.no-scrap" : "bench.again.scraps", blank)));
        for (Suggestion scrap : scraps) {
            String place = scrap.sheet().facts().place();
            list.add(new Paragraph(figures.text(
                    place.isEmpty() ? "bench.again.scrap.unplaced" : "bench.again.scrap",
                    scrap.sheet().id().value(),
                    place,
                    figures.say(scrap.reason()))));
        }
        return list;
    }

    private Div row(String label, com.vaadin.flow.component.Component what) {
        Span name = new Span(figures.text(label));
        name.addClassName("pw-soft");
        Div line = new Div(name, what);
        line.addClassName("pw-apart");
        return line;
    }
}
