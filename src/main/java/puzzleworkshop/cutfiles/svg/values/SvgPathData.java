package puzzleworkshop.cutfiles.svg.values;

import java.awt.geom.Path2D;
import puzzleworkshop.cutfiles.found.Curves;
import puzzleworkshop.measure.WorkLimit;

/**
 * Path data (SVG 2, chapter 9) in double precision. What comes before an error is drawn, as the standard asks (9.5.4).
 * Arcs by appendix B.2 (from end points to centre), then cubic curves.
 */
public final class SvgPathData {

    private static final int STEPS_OF_A_LINE = 8;
    private static final int STEPS_OF_AN_ARC = 64;

    private final Scanner in;
    private final WorkLimit limit;
    private final Path2D.Double path = new Path2D.Double(Path2D.WIND_NON_ZERO);
    private double x;
    private double y;
    private double startX;
    private double startY;
    /** The last control point, for smooth curves; the current point after anything else. */
    private double handleX;

    private double handleY;
    private char before = 'M';

    private SvgPathData(String text, WorkLimit limit) {
        this.in = new Scanner(text);
        this.limit = limit;
    }

    /**
     * @param path what could be read
     * @param whole whether that is all of it
     */
    public record Read(Path2D path, boolean whole) {}

    public static Read read(String text, WorkLimit limit) {
        SvgPathData data = new SvgPathData(text, limit);
        return new Read(data.path, data.readAll());
    }

    private boolean readAll() {
        try {
            in.skipBlanks();
            if (in.atEnd()) {
                return true;
            }
            if (in.peek() != 'M' && in.peek() != 'm') {
                return false;
            }
            boolean first = true;
            while (!in.atEnd()) {
                command(in.take(), first);
                first = false;
                in.skipBlanks();
            }
            return true;
        } catch (Unreadable damaged) {
            return false;
        }
    }

    private void command(char letter, boolean first) {
        boolean relative = Character.isLowerCase(letter);
        char kind = Character.toUpperCase(letter);
        if (kind == 'Z') {
            path.closePath();
            x = startX;
            y = startY;
            remember('Z', x, y);
            return;
        }
        if ("MLHVCSQTA".indexOf(kind) < 0) {
            throw new Unreadable("no command: " + letter);
        }
        in.skipBlanks();
        boolean again = false;
        do {
            limit.steps(kind == 'A' ? STEPS_OF_AN_ARC : STEPS_OF_A_LINE);
            double baseX = relative ? x : 0;
            double baseY = relative ? y : 0;
            draw(again && kind == 'M' ? 'L' : kind, baseX, baseY, first && !again);
            again = true;
            in.skipComma();
        } while (in.atNumber());
    }

    private void draw(char kind, double baseX, double baseY, boolean first) {
        if (kind != 'M' && before == 'Z') {
            path.moveTo(x, y);
        }
        switch (kind) {
            case 'M' -> {
                double toX = (first ? 0 : baseX) + next();
                double toY = (first ? 0 : baseY) + next();
                path.moveTo(toX, toY);
                startX = toX;
                startY = toY;
                arrive(kind, toX, toY);
            }
            case 'L' -> line(baseX + next(), baseY + next());
            case 'H' -> line(baseX + next(), y);
            case 'V' -> line(x, baseY + next());
            case 'C' -> cubic(baseX + next(), baseY + next(), baseX, baseY);
            case 'S' -> {
                boolean goesOn = before == 'C' || before == 'S';
                cubic(goesOn ? 2 * x - handleX : x, goesOn ? 2 * y - handleY : y, baseX, baseY);
            }
            case 'Q' -> quadratic(baseX + next(), baseY + next(), baseX, baseY);
            case 'T' -> {
                boolean goesOn = before == 'Q' || before == 'T';
                quadratic(goesOn ? 2 * x - handleX : x, goesOn ? 2 * y - handleY : y, baseX, baseY);
            }
            default -> arc(baseX, baseY);
        }
    }

    private double next() {
        in.skipComma();
        return in.number();
    }

    private void line(double toX, double toY) {
        path.lineTo(toX, toY);
        arrive('L', toX, toY);
    }

    private void cubic(double x1, double y1, double baseX, double baseY) {
        double x2 = baseX + next();
        double y2 = baseY + next();
        double toX = baseX + next();
        double toY = baseY + next();
        path.curveTo(x1, y1, x2, y2, toX, toY);
        arrive('C', toX, toY);
        remember('C', x2, y2);
    }

    private void quadratic(double x1, double y1, double baseX, double baseY) {
        double toX = baseX + next();
        double toY = baseY + next();
        path.quadTo(x1, y1, toX, toY);
        arrive('Q', toX, toY);
        remember('Q', x1, y1);
    }

    private void arrive(char kind, double toX, double toY) {
        x = toX;
        y = toY;
        remember(kind, toX, toY);
    }

    private void remember(char kind, double controlX, double controlY) {
        before = kind;
        handleX = controlX;
        handleY = controlY;
    }

    private void arc(double baseX, double baseY) {
        double radiusX = Math.abs(next());
        double radiusY = Math.abs(next());
        double turn = Math.toRadians(next());
        in.skipComma();
        boolean large = in.flag();
        in.skipComma();
        boolean sweep = in.flag();
        double toX = baseX + next();
        double toY = baseY + next();
        if (toX == x && toY == y) {
            arrive('A', toX, toY); // left out, as the standard says
        } else if (radiusX == 0 || radiusY == 0) {
            line(toX, toY);
        } else {
            arc(radiusX, radiusY, turn, large != sweep ? 1 : -1, sweep, toX, toY);
            arrive('A', toX, toY);
        }
    }

    private void arc(double radiusX, double radiusY, double turn, int side, boolean sweep, double toX, double toY) {
        double cos = Math.cos(turn);
        double sin = Math.sin(turn);
        double halfX = (x - toX) / 2;
        double halfY = (y - toY) / 2;
        double x1 = cos * halfX + sin * halfY;
        double y1 = -sin * halfX + cos * halfY;
        double reach = x1 * x1 / (radiusX * radiusX) + y1 * y1 / (radiusY * radiusY);
        double grown = Math.max(1, Math.sqrt(reach)); // radii too small to span the ends grow until they do
        double rx = radiusX * grown;
        double ry = radiusY * grown;
        double over = x1 * x1 / (rx * rx) + y1 * y1 / (ry * ry);
        double factor = side * Math.sqrt(Math.max(0, (1 - over) / over));
        double cx1 = factor * rx * y1 / ry;
        double cy1 = -factor * ry * x1 / rx;
        double cx = cos * cx1 - sin * cy1 + (x + toX) / 2;
        double cy = sin * cx1 + cos * cy1 + (y + toY) / 2;
        double from = Math.atan2((y1 - cy1) / ry, (x1 - cx1) / rx);
        double swept = Math.atan2((-y1 - cy1) / ry, (-x1 - cx1) / rx) - from;
        if (sweep && swept <= 0) {
            swept += 2 * Math.PI;
        } else if (!sweep && swept >= 0) {
            swept -= 2 * Math.PI;
        }
        Curves.arc(path, cx, cy, rx, ry, turn, from, swept);
    }
}
