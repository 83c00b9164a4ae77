package puzzleworkshop.cutfiles.reading;

import java.awt.Shape;
import java.awt.geom.PathIterator;
import java.io.StringReader;
import org.apache.batik.parser.AWTPathProducer;
import org.apache.batik.parser.PathParser;

/**
 * Reads SVG path data with Batik's grammar, but makes elliptical arcs itself: the library's own enlarges radii by a
 * hundred-thousandth, which leaves a half circle of 20 mm flatter by 0.05 mm. Centre and angles as in SVG 2, appendix
 * B.2.4 (conversion from endpoint to centre parameterization), then cubic curves of at most a quarter turn.
 */
final class SvgPath extends AWTPathProducer {

    private SvgPath() {}

    static Shape of(String data) {
        SvgPath path = new SvgPath();
        PathParser parser = new PathParser();
        parser.setPathHandler(path);
        path.setWindingRule(PathIterator.WIND_NON_ZERO);
        parser.parse(new StringReader(data));
        return path.getShape();
    }

    @Override
    public void arcRel(float rx, float ry, float angle, boolean large, boolean sweep, float x, float y) {
        arcAbs(rx, ry, angle, large, sweep, currentX + x, currentY + y);
    }

    @Override
    public void arcAbs(float rx, float ry, float angle, boolean large, boolean sweep, float x, float y) {
        if (rx == 0 || ry == 0 || (x == currentX && y == currentY)) {
            linetoAbs(x, y);
            return;
        }
        arc(Math.abs((double) rx), Math.abs((double) ry), Math.toRadians(angle), large != sweep ? 1 : -1, sweep, x, y);
        xCenter = currentX = x;
        yCenter = currentY = y;
    }

    private void arc(double radiusX, double radiusY, double turn, int side, boolean sweep, double toX, double toY) {
        double cos = Math.cos(turn);
        double sin = Math.sin(turn);
        double halfX = (currentX - toX) / 2;
        double halfY = (currentY - toY) / 2;
        double x1 = cos * halfX + sin * halfY;
        double y1 = -sin * halfX + cos * halfY;
        double reach = x1 * x1 / (radiusX * radiusX) + y1 * y1 / (radiusY * radiusY);
        double grown = Math.max(1, Math.sqrt(reach)); // radii too small to span the ends grow until they do
        double rx = radiusX * grown;
        double ry = radiusY * grown;
        double over = rx * rx * y1 * y1 + ry * ry * x1 * x1;
        double factor = side * Math.sqrt(Math.max(0, (rx * rx * ry * ry - over) / over));
        double cx1 = factor * rx * y1 / ry;
        double cy1 = -factor * ry * x1 / rx;
        double cx = cos * cx1 - sin * cy1 + (currentX + toX) / 2;
        double cy = sin * cx1 + cos * cy1 + (currentY + toY) / 2;
        double from = Math.atan2((y1 - cy1) / ry, (x1 - cx1) / rx);
        double swept = Math.atan2((-y1 - cy1) / ry, (-x1 - cx1) / rx) - from;
        if (sweep && swept <= 0) {
            swept += 2 * Math.PI;
        } else if (!sweep && swept >= 0) {
            swept -= 2 * Math.PI;
        }
        int parts = (int) Math.ceil(Math.abs(swept) / (Math.PI / 2) - 1e-9);
        double step = swept / parts;
        double handle = 4.0 / 3 * Math.tan(step / 4);
        for (int i = 0; i < parts; i++) {
            double a = from + i * step;
            double b = a + step;
            double[] c1 = {Math.cos(a) - handle * Math.sin(a), Math.sin(a) + handle * Math.cos(a)};
            double[] c2 = {Math.cos(b) + handle * Math.sin(b), Math.sin(b) - handle * Math.cos(b)};
            boolean last = i == parts - 1;
            path.curveTo(
                    (float) (cx + cos * rx * c1[0] - sin * ry * c1[1]),
                    (float) (cy + sin * rx * c1[0] + cos * ry * c1[1]),
                    (float) (cx + cos * rx * c2[0] - sin * ry * c2[1]),
                    (float) (cy + sin * rx * c2[0] + cos * ry * c2[1]),
                    (float) (last ? toX : cx + cos * rx * Math.cos(b) - sin * ry * Math.sin(b)),
                    (float) (last ? toY : cy + sin * rx * Math.cos(b) + cos * ry * Math.sin(b)));
        }
    }
}
