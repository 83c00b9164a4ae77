package puzzleworkshop.sheets.ui.photo;

import com.vaadin.flow.component.AttachEvent;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.dependency.JavaScript;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.dom.DomEvent;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import puzzleworkshop.camera.model.View;
import puzzleworkshop.camera.outline.FoundBoard;
import puzzleworkshop.camera.outline.FoundBoards;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.Point;

/** A photo with the outline found in it: corners are dragged, bad areas painted with a finger; both in the photo, kept in mm. */
@JavaScript("context://sheets-photo.js")
class OutlineOverPhoto extends Div {

    /** A finger's stroke with fewer points than this is no area. */
    private static final int FEWEST_PAINTED = 6;

    private static final int MOST_PAINTED = 400;

    private final transient Formatter figures;
    private final transient View view;
    private final transient List<Point> corners = new ArrayList<>();
    private final transient List<List<Point>> bad = new ArrayList<>();
    private final int width;
    private final int height;
    private final double photoScale;
    private final double height0;
    private final double printScale;
    private final Div canvas = new Div();
    private final Button paint;
    private final Button undo;
    private boolean painting;

    OutlineOverPhoto(
            Formatter figures, FoundBoards found, int which, byte[] jpeg, int width, int height, double printScale) {
        this.figures = figures;
        this.view = found.sheet().view();
        this.width = width;
        this.height = height;
        // photos of more than some 20 megapixels were halved before they were measured in
        this.photoScale = (long) width * height > puzzleworkshop.camera.Photo.MOST_PIXELS ? 2 : 1;
        this.printScale = printScale;
        FoundBoard board = found.boards().get(which);
        this.height0 = -board.heightMm() / printScale;
        corners.addAll(board.outer());
        bad.addAll(board.holes());
        addClassName("pw-stack");
        canvas.addClassName("sheets-photo-canvas");
        canvas.getElement()
                .addEventListener("pw-corner", this::moved)
                .addEventData("event.detail.i")
                .addEventData("event.detail.u")
                .addEventData("event.detail.v");
        canvas.getElement().addEventListener("pw-painted", this::painted).addEventData("event.detail.points");
        paint = new Button(figures.text("sheets.photo.paint"), event -> paint(!painting));
        paint.getElement().setAttribute("aria-pressed", "false");
        undo = new Button(figures.text("sheets.photo.unpaint"), event -> {
            if (!bad.isEmpty()) {
                bad.removeLast();
                draw();
            }
        });
        Div tools = new Div(paint, undo);
        tools.addClassName("pw-row");
        add(canvas, tools);
        canvas.getElement().setProperty("innerHTML", photo(jpeg));
    }

    @Override
    protected void onAttach(AttachEvent event) {
        super.onAttach(event);
        draw();
    }

    /** The photo goes to the browser once; what is drawn over it changes with each touch. */
    private String photo(byte[] jpeg) {
        return "<svg role='img' aria-label='"
                + figures.text("sheets.photo.over").replace("'", "&#39;")
                + "' viewBox='0 0 " + width + ' ' + height
                + "'><image id='sheets-photo-picture' href='data:image/jpeg;base64,"
                + Base64.getEncoder().encodeToString(jpeg) + "' width='" + width + "' height='" + height
                + "'/><g class='sheets-photo-over'></g></svg>";
    }

    private void paint(boolean now) {
        painting = now;
        paint.getElement().setAttribute("aria-pressed", String.valueOf(now));
        draw();
    }

    private void moved(DomEvent event) {
        int i = (int) event.getEventData().get("event.detail.i").asDouble();
        double u = event.getEventData().get("event.detail.u").asDouble();
        double v = event.getEventData().get("event.detail.v").asDouble();
        if (i >= 0 && i < corners.size() && inside(u, v)) {
            corners.set(i, spot(u, v));
        }
        draw();
    }

    private void painted(DomEvent event) {
        String[] numbers =
                event.getEventData().get("event.detail.points").asString().split(" ");
        List<Point> area = new ArrayList<>();
        for (int i = 0; i + 1 < Math.min(numbers.length, 2 * MOST_PAINTED); i += 2) {
            double u = Double.parseDouble(numbers[i]);
            double v = Double.parseDouble(numbers[i + 1]);
            if (inside(u, v)) {
                area.add(spot(u, v));
            }
        }
        if (area.size() >= FEWEST_PAINTED) {
            bad.add(area);
        }
        paint(false);
    }

    private boolean inside(double u, double v) {
        return u >= 0 && v >= 0 && u <= width && v <= height;
    }

    private Point spot(double u, double v) {
        double[] out = new double[2];
        view.onPlane(u / photoScale, v / photoScale, height0, out);
        return new Point(out[0] * printScale, out[1] * printScale);
    }

    private String path(List<Point> ring) {
        StringBuilder path = new StringBuilder();
        double[] uv = new double[2];
        for (Point spot : ring) {
            view.project(spot.xMm() / printScale, spot.yMm() / printScale, height0, uv);
            path.append(path.isEmpty() ? 'M' : 'L')
                    .append(String.format(Locale.ROOT, "%.1f %.1f", uv[0] * photoScale, uv[1] * photoScale));
        }
        return path.append('Z').toString();
    }

    private void draw() {
        undo.setVisible(!bad.isEmpty());
        StringBuilder svg = new StringBuilder();
        svg.append("<path class='sheets-photo-edge' d='").append(path(corners)).append("'/>");
        bad.forEach(ring -> svg.append("<path class='sheets-photo-bad' d='")
                .append(path(ring))
                .append("'/>"));
        // each corner twice: small to see, large to touch; the script gives them their sizes
        circles(svg, "sheets-photo-touch");
        circles(svg, "sheets-photo-corner");
        canvas.getElement()
                .executeJs(
                        "const go = () => window.pwSheetsPhoto ? pwSheetsPhoto.over(this, $0, $1) : setTimeout(go, 50);"
                                + " setTimeout(go, 20)",
                        svg.toString(),
                        painting);
    }

    private void circles(StringBuilder svg, String className) {
        double[] uv = new double[2];
        for (int i = 0; i < corners.size() && !painting; i++) {
            view.project(corners.get(i).xMm() / printScale, corners.get(i).yMm() / printScale, height0, uv);
            svg.append(String.format(
                    Locale.ROOT,
                    "<circle class='%s' data-i='%d' cx='%.1f' cy='%.1f'/>",
                    className,
                    i,
                    uv[0] * photoScale,
                    uv[1] * photoScale));
        }
    }

    /** The outline in mm, its longest side level. */
    Outline outline() {
        Point a = corners.getFirst();
        Point b = corners.getLast();
        double longest = 0;
        for (int i = 0; i < corners.size(); i++) {
            Point p = corners.get(i);
            Point q = corners.get((i + 1) % corners.size());
            if (p.distanceTo(q) > longest) {
                longest = p.distanceTo(q);
                a = p;
                b = q;
            }
        }
        double angle = -Math.atan2(b.yMm() - a.yMm(), b.xMm() - a.xMm());
        List<List<Point>> areas = bad.stream().map(ring -> turned(ring, angle)).toList();
        return areas.isEmpty()
                ? Outline.of(turned(corners, angle)).atOrigin()
                : Outline.mended(turned(corners, angle), areas).atOrigin();
    }

    private static List<Point> turned(List<Point> ring, double angle) {
        double c = Math.cos(angle);
        double s = Math.sin(angle);
        return ring.stream()
                .map(p -> new Point(round(c * p.xMm() - s * p.yMm()), round(s * p.xMm() + c * p.yMm())))
                .toList();
    }

    /** A hundredth of a millimetre is finer than any photo tells. */
    private static double round(double mm) {
        return Math.round(mm * 100) / 100.0;
    }
}
