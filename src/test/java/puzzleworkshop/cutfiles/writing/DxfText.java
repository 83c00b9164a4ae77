package puzzleworkshop.cutfiles.writing;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Point2D;
import java.util.ArrayList;
import java.util.List;

/** Reads a DXF for tests; shares nothing with what writes it. */
public final class DxfText {

    private DxfText() {}

    public record Line(String layer, boolean closed, List<Point2D> points) {

        public double length() {
            double sum = closed ? points.getFirst().distance(points.getLast()) : 0;
            for (int i = 1; i < points.size(); i++) {
                sum += points.get(i - 1).distance(points.get(i));
            }
            return sum;
        }
    }

    /** Reads POLYLINE, VERTEX and SEQEND by their group codes (AutoCAD DXF reference, release 12; from memory). */
    public static List<Line> lines(String text) {
        String[] rows = text.split("\r\n");
        assertThat(rows.length % 2).isZero();
        List<Line> lines = new ArrayList<>();
        String entity = "";
        String layer = "";
        boolean closed = false;
        List<Point2D> points = null;
        double x = 0;
        for (int i = 0; i < rows.length; i += 2) {
            int code = Integer.parseInt(rows[i].strip());
            String value = rows[i + 1];
            if (code == 0) {
                if (value.equals("POLYLINE")) {
                    points = new ArrayList<>();
                } else if (value.equals("SEQEND")) {
                    lines.add(new Line(layer, closed, points));
                }
                entity = value;
            } else if (code == 8) {
                layer = value;
            } else if (code == 70 && entity.equals("POLYLINE")) {
                closed = value.equals("1");
            } else if (entity.equals("VERTEX") && code == 10) {
                x = Double.parseDouble(value);
            } else if (entity.equals("VERTEX") && code == 20) {
                points.add(new Point2D.Double(x, Double.parseDouble(value)));
            }
        }
        return lines;
    }
}
