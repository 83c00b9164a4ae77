package puzzleworkshop.sheets.ui;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Svg;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;

/** The squared paper on which an outline is drawn: grid, rings with the lengths of their sides, the spot of a fault. */
final class EditorPaper {

    private static final int MOST_SQUARES = 80;

    private final Formatter figures;
    private final double width;
    private final double height;
    private final double rim;

    /** All in mm. */
    EditorPaper(Formatter figures, double width, double height, double rim) {
        this.figures = figures;
        this.width = width;
        this.height = height;
        this.rim = rim;
    }

    Svg draw(DrawnOutline drawn, int grid, Optional<Point> fault, String words) {
        Svg svg = Svg.of(-rim, -rim, width + 2 * rim, height + 2 * rim, figures.text("sheets.editor.title"), words);
        double step = Math.max(grid, Math.ceil(Math.max(width, height) / MOST_SQUARES / grid) * grid);
        for (double x = 0; x <= width + 1e-9; x += step) {
            svg.line(x, 0, x, height, Math.round(x / step) % 5 == 0 ? "sheets-grid-strong" : "sheets-grid");
        }
        for (double y = 0; y <= height + 1e-9; y += step) {
            svg.line(0, y, width, y, Math.round(y / step) % 5 == 0 ? "sheets-grid-strong" : "sheets-grid");
        }
        for (int r = 0; r < drawn.rings().size(); r++) {
            ring(svg, drawn, r);
        }
        fault.ifPresent(spot -> svg.raw("<circle cx='" + Svg.n(spot.xMm()) + "' cy='" + Svg.n(spot.yMm()) + "' r='"
                + Svg.n(width / 40) + "' class='sheets-fault'/>"));
        return svg;
    }

    private void ring(Svg svg, DrawnOutline drawn, int r) {
        List<Point> ring = drawn.rings().get(r);
        if (ring.isEmpty()) {
            return;
        }
        String path = SheetDrawing.path(ring);
        boolean open = drawn.isOpen(r);
        svg.path(
                open ? path.substring(0, path.length() - 1) : path,
                open ? "sheets-drawn-line" : r == 0 ? "sheets-wood" : "sheets-bad");
        double letter = Math.max(width, height) / 30;
        for (int i = 0; i < ring.size(); i++) {
            Point spot = ring.get(i);
            boolean aim = open && i == 0 && ring.size() >= 3;
            svg.raw("<circle cx='" + Svg.n(spot.xMm()) + "' cy='" + Svg.n(spot.yMm()) + "' r='"
                    + Svg.n(aim ? letter * 0.6 : letter * 0.3) + "' class='"
                    + (aim ? "sheets-corner-aim" : "sheets-corner")
                    + "'/>");
            if (i > 0 || !open) {
                Point before = ring.get((i + ring.size() - 1) % ring.size());
                svg.text(
                        (spot.xMm() + before.xMm()) / 2,
                        (spot.yMm() + before.yMm()) / 2 - letter * 0.3,
                        letter,
                        "middle",
                        figures.number(figures.units().valueOf(Length.mm(spot.distanceTo(before))), 1),
                        "sheets-edge-length");
            }
        }
    }
}
