package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Svg;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.geometry.MarkingOut;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.fit.LargestRectangle;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.Reservation;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.find.NewSheet;
import puzzleworkshop.sheets.find.Suggestion;

/**
 * A sheet drawn to scale: birch for wood, bad areas hatched, the blank in accent, the useful remainder dashed with its
 * size written in it. Says in words what it shows for those who do not see it.
 */
@StyleSheet("context://sheets.css")
public class SheetDrawing extends SvgBox {

    private static final AtomicLong NEXT = new AtomicLong();

    private final transient Formatter figures;

    public SheetDrawing(Formatter figures) {
        super("sheets-drawing");
        this.figures = figures;
    }

    public SheetDrawing show(Suggestion suggestion) {
        String title =
                figures.text("sheets.drawing.title", suggestion.sheet().id().toString());
        draw(svg(
                suggestion.sheet().outline(),
                title,
                suggestion.blank(),
                suggestion.placement(),
                suggestion.remainder()));
        return this;
    }

    public SheetDrawing show(NewSheet offer, Size blank) {
        draw(svg(
                Outline.rectangle(offer.offer().size()),
                offer.offer().name(),
                blank,
                offer.placement(),
                offer.remainder()));
        return this;
    }

    /** The sheet with the blank it is held for, if it is. */
    public SheetDrawing show(Sheet sheet) {
        String title = figures.text("sheets.drawing.title", sheet.id().toString());
        draw(sheet.reservation()
                .map(held -> marked(
                        svg(sheet.outline(), title, held.blank(), held.placement(), null), sheet.outline(), held))
                .orElseGet(() -> svg(sheet.outline(), title, null, null, null)));
        return this;
    }

    /** A shape that cannot be a board, with the spot ringed. */
    SheetDrawing refused(Outline outline, String title, Point spot) {
        Size bounds = outline.bounds();
        double ring = bounds.longerSide().mm() / 30;
        Svg svg = svg(outline, title, null, null, null);
        svg.raw("<circle cx='" + Svg.n(spot.xMm()) + "' cy='" + Svg.n(spot.yMm()) + "' r='" + Svg.n(ring)
                + "' class='sheets-fault'/>");
        draw(svg);
        return this;
    }

    /** A bare shape with the rectangles of use in it. */
    public SheetDrawing show(Outline outline, String title, Remainder rest) {
        draw(svg(outline, title, null, null, rest));
        return this;
    }

    /** Blank, placement and remainder may be null. */
    public SheetDrawing show(Outline outline, String title, Size blank, Placement placement, Remainder rest) {
        draw(svg(outline, title, blank, placement, rest));
        return this;
    }

    /** Makes drawings side by side comparable: a board of the widest size fills its place, others in proportion. */
    public SheetDrawing toScale(Outline outline, double widestMm) {
        double share = 100 * outline.bounds().width().mm() / widestMm;
        getStyle().setWidth(Svg.n(Math.clamp(share, 6, 100)) + "%");
        return this;
    }

    private Svg svg(Outline outline, String title, Size blank, Placement placement, Remainder rest) {
        Size bounds = outline.bounds();
        Point origin = outline.origin();
        double w = bounds.width().mm();
        double h = bounds.height().mm();
        double rim = Math.max(w, h) * 0.012;
        double largest = Math.max(w, h) / 14;
        Svg svg = Svg.of(
                origin.xMm() - rim, origin.yMm() - rim, w + 2 * rim, h + 2 * rim, title, words(outline, blank, rest));
        String hatch = "sheets-hatch-" + NEXT.incrementAndGet();
        double step = Math.max(w, h) / 40;
        svg.raw("<defs><pattern id='" + hatch + "' width='" + Svg.n(step) + "' height='" + Svg.n(step)
                + "' patternUnits='userSpaceOnUse' patternTransform='rotate(45)'><line x1='0' y1='0' x2='0' y2='"
                + Svg.n(step) + "' class='sheets-hatch-line' style='stroke-width:" + Svg.n(step / 3)
                + "'/></pattern><clipPath id='" + hatch + "-edge'><path d='" + path(outline.outer())
                + "'/></clipPath></defs>");
        svg.path(path(outline.outer()), "sheets-wood");
        svg.raw("<g clip-path='url(#" + hatch + "-edge)'>");
        for (List<Point> bad : outline.badAreas()) {
            svg.path(path(bad), "sheets-bad");
            svg.raw("<path d='" + path(bad) + "' fill='url(#" + hatch + ")'/>");
        }
        svg.raw("</g>");
        if (rest != null) {
            rest.parts().forEach(part -> part.useful().forEach(useful -> rectangle(svg, useful, largest)));
        }
        if (blank != null) {
            svg.group("sheets-held", "");
            svg.path(path(placement.corners(blank)), "sheets-blank");
            label(svg, placement, blank, "sheets-blank-size", largest);
            svg.end();
        }
        return svg;
    }

    /** The letters and numbers by which a tilted blank is marked out. */
    private static Svg marked(Svg svg, Outline outline, Reservation held) {
        if (MarkingOut.isStraight(held.placement())) {
            return svg;
        }
        MarkingOut marks = MarkingOut.of(outline, held.placement(), held.blank());
        Point middle = held.placement().centre(held.blank());
        Size bounds = outline.bounds();
        double letter = bounds.longerSide().mm() / 22;
        Point board = new Point(
                outline.origin().xMm() + bounds.width().mm() / 2,
                outline.origin().yMm() + bounds.height().mm() / 2);
        mark(svg, marks.a(), board, letter, "A");
        mark(svg, marks.b(), board, letter, "B");
        for (int i = 0; i < marks.corners().size(); i++) {
            mark(svg, marks.corners().get(i).at(), middle, letter * 0.8, String.valueOf(i + 1));
        }
        return svg;
    }

    /** Written beside a corner, a little towards the middle. */
    private static void mark(Svg svg, Point corner, Point middle, double letter, String text) {
        double away = corner.distanceTo(middle);
        double share = away == 0 ? 0 : Math.min(0.5, letter * 1.1 / away);
        svg.text(
                corner.xMm() + (middle.xMm() - corner.xMm()) * share,
                corner.yMm() + (middle.yMm() - corner.yMm()) * share + letter * 0.35,
                letter,
                "middle",
                text,
                "sheets-mark");
    }

    private void rectangle(Svg svg, LargestRectangle useful, double largest) {
        svg.path(path(useful.placement().corners(useful.size())), "sheets-useful");
        label(svg, useful.placement(), useful.size(), "sheets-useful-size", largest);
    }

    /** The size, written along the longer side and never upside down. */
    private void label(Svg svg, Placement placement, Size size, String cssClass, double largest) {
        Point centre = placement.centre(size);
        boolean tall = size.height().mm() > size.width().mm();
        double turn = placement.degrees() + (tall ? 90 : 0);
        turn = turn > 90 && turn <= 270 ? turn - 180 : turn;
        double longer = size.longerSide().mm();
        double shorter = size.shorterSide().mm();
        String text = figures.size(size);
        double letter = Math.min(largest, Math.min(shorter * 0.3, longer * 1.5 / text.length()));
        svg.group("", "translate(" + Svg.n(centre.xMm()) + " " + Svg.n(centre.yMm()) + ") rotate(" + Svg.n(turn) + ")")
                .text(0, letter * 0.35, letter, "middle", text, cssClass)
                .end();
    }

    private String words(Outline outline, Size blank, Remainder rest) {
        List<String> words = new ArrayList<>();
        words.add(figures.text(
                "sheets.drawing.board", outline.bounds(), outline.outer().size()));
        if (!outline.badAreas().isEmpty()) {
            words.add(figures.text("sheets.drawing.bad", outline.badAreas().size()));
        }
        if (blank != null) {
            words.add(figures.text("sheets.drawing.blank", blank));
        }
        if (rest != null) {
            String useful = rest.parts().stream()
                    .flatMap(part -> part.useful().stream())
                    .map(rectangle -> figures.size(rectangle.size()))
                    .collect(Collectors.joining(", "));
            words.add(
                    useful.isEmpty()
                            ? figures.text("sheets.drawing.nouse")
                            : figures.text("sheets.drawing.useful", useful));
        }
        return String.join(" ", words);
    }

    static String path(List<Point> ring) {
        StringBuilder path = new StringBuilder();
        for (Point spot : ring) {
            path.append(path.isEmpty() ? "M" : "L")
                    .append(Svg.n(spot.xMm()))
                    .append(' ')
                    .append(Svg.n(spot.yMm()));
        }
        return path.append('Z').toString();
    }
}
