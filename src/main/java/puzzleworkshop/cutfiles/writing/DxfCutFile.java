package puzzleworkshop.cutfiles.writing;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * Writes a plan as DXF, release 12 in ASCII, the form every laser program reads (AutoCAD DXF reference, AC1009): one
 * polyline for each line, on two layers. Release 12 knows no Bézier curves; chords stay within
 * {@link CutFile#DXF_TOLERANCE_MM}. Its y axis runs up, so the drawing is mirrored into the first quadrant, standing
 * on y = 0.
 */
final class DxfCutFile {

    static final String INNER = "INNER_LINES";
    static final String OUTLINE = "OUTLINE";
    private static final int LINE_WIDTH_OF_FILE = 200;
    private static final int MILLIMETRES = 4;

    private final StringBuilder text = new StringBuilder();
    private final double bottom;
    private final Optional<MachinePage> page;

    private DxfCutFile(double bottom, Optional<MachinePage> page) {
        this.bottom = bottom;
        this.page = page;
    }

    static String text(CutPlan plan, Optional<MachinePage> page) {
        Bounds frame = plan.frame();
        DxfCutFile file = new DxfCutFile(CutFile.corner(plan, page).yMm(), page);
        file.header(plan, frame);
        file.layers();
        file.pair(0, "SECTION");
        file.pair(2, "ENTITIES");
        boolean innerFirst = plan.sequence() == CutPlan.Sequence.INNER_FIRST;
        file.lines(file.named(innerFirst ? INNER : OUTLINE), innerFirst ? plan.inner() : plan.outline());
        file.lines(file.named(innerFirst ? OUTLINE : INNER), innerFirst ? plan.outline() : plan.inner());
        file.pair(0, "ENDSEC");
        file.pair(0, "EOF");
        return file.text.toString();
    }

    private void header(CutPlan plan, Bounds frame) {
        comment(CutFile.title(plan, page));
        comment(CutFile.statement(plan, page));
        comment("In this file y runs up and the lower edge of the "
                + (page.flatMap(MachinePage::bed).isPresent() ? "bed" : "frame")
                + " lies on y = 0. Chords of curves stay within "
                + CutFile.DXF_TOLERANCE_MM + " mm.");
        pair(0, "SECTION");
        pair(2, "HEADER");
        pair(9, "$ACADVER");
        pair(1, "AC1009");
        pair(9, "$INSUNITS");
        pair(70, Integer.toString(MILLIMETRES));
        pair(9, "$MEASUREMENT");
        pair(70, "1");
        pair(9, "$EXTMIN");
        point(Point.of(frame.minX(), frame.maxY()));
        pair(9, "$EXTMAX");
        point(Point.of(frame.maxX(), frame.minY()));
        pair(0, "ENDSEC");
    }

    private void layers() {
        pair(0, "SECTION");
        pair(2, "TABLES");
        pair(0, "TABLE");
        pair(2, "LTYPE");
        pair(70, "1");
        pair(0, "LTYPE");
        pair(2, "CONTINUOUS");
        pair(70, "0");
        pair(3, "Solid line");
        pair(72, "65");
        pair(73, "0");
        pair(40, "0.0");
        pair(0, "ENDTAB");
        pair(0, "TABLE");
        pair(2, "LAYER");
        pair(70, "2");
        layer(named(INNER));
        layer(named(OUTLINE));
        pair(0, "ENDTAB");
        pair(0, "ENDSEC");
    }

    /** A layer of a file for one machine carries the setting in its name. */
    private String named(String layer) {
        return page.map(bed -> layer + "_" + bed.layer()).orElse(layer);
    }

    private void layer(String name) {
        pair(0, "LAYER");
        pair(2, name);
        pair(70, "0");
        pair(62, "7");
        pair(6, "CONTINUOUS");
    }

    private void lines(String layer, List<CurvePath> lines) {
        for (CurvePath line : lines) {
            List<Point> points = line.flattened(CutFile.DXF_TOLERANCE_MM);
            pair(0, "POLYLINE");
            pair(8, layer);
            pair(66, "1");
            point(Point.of(0, bottom));
            pair(70, line.closed() ? "1" : "0");
            // a closed polyline returns to its first vertex by its flag, not by a vertex of its own
            for (Point p : line.closed() ? points.subList(0, points.size() - 1) : points) {
                pair(0, "VERTEX");
                pair(8, layer);
                point(p);
            }
            pair(0, "SEQEND");
            pair(8, layer);
        }
    }

    private void point(Point p) {
        pair(10, number(p.xMm()));
        pair(20, number(bottom - p.yMm()));
        pair(30, "0.0");
    }

    private void comment(String words) {
        String plain = words.replaceAll("[^\\x20-\\x7e]", "?");
        for (int i = 0; i < plain.length(); i += LINE_WIDTH_OF_FILE) {
            pair(999, plain.substring(i, Math.min(plain.length(), i + LINE_WIDTH_OF_FILE)));
        }
    }

    private void pair(int code, String value) {
        text.append(String.format(Locale.ROOT, "%3d", code))
                .append("\r\n")
                .append(value)
                .append("\r\n");
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.4f", value);
    }
}
