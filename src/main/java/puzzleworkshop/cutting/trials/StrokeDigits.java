package puzzleworkshop.cutting.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;

/**
 * Digits as single strokes for engraving, drawn by ourselves on a grid of 4 × 6: a beam follows lines, it does not fill
 * letters. Knows 0 to 9, point, %, × and slash; anything else is a blank.
 */
public final class StrokeDigits {

    private static final double GRID_HEIGHT = 6;
    private static final double ADVANCE = 5.2;

    /** Strokes as runs of grid points 'xy', y down. */
    private static final Map<Character, String> STROKES = Map.ofEntries(
            Map.entry('0', "10 30 41 45 36 16 05 01 10"),
            Map.entry('1', "01 20 26|06 46"),
            Map.entry('2', "01 10 30 41 42 06 46"),
            Map.entry('3', "01 10 30 41 42 33 44 45 36 16 05|13 33"),
            Map.entry('4', "36 30 04 44"),
            Map.entry('5', "40 00 03 33 44 45 36 06"),
            Map.entry('6', "31 20 10 02 05 16 36 45 44 33 03"),
            Map.entry('7', "00 40 26"),
            Map.entry('8', "13 02 01 10 30 41 42 33 13 04 05 16 36 45 44 33"),
            Map.entry('9', "43 13 02 01 10 30 41 44 26 15"),
            Map.entry('.', "15 26"),
            Map.entry('%', "46 40 06|00 10 11 01 00|35 45 46 36 35"),
            Map.entry('x', "02 46|42 06"),
            Map.entry('/', "06 40"));

    private StrokeDigits() {}

    /** Width in mm of a text of the given height. */
    public static double width(String text, double height) {
        return text.isEmpty() ? 0 : ((text.length() - 1) * ADVANCE + 4) * height / GRID_HEIGHT;
    }

    /** The strokes of a text whose upper left corner is given, as open paths. */
    public static List<CurvePath> write(String text, double x, double y, double height) {
        double scale = height / GRID_HEIGHT;
        List<CurvePath> paths = new ArrayList<>();
        for (int i = 0; i < text.length(); i++) {
            String strokes = STROKES.getOrDefault(text.charAt(i), "");
            for (String stroke : strokes.isEmpty() ? new String[0] : strokes.split("\\|")) {
                List<Point> points = new ArrayList<>();
                for (String at : stroke.split(" ")) {
                    points.add(
                            Point.of(x + (i * ADVANCE + at.charAt(0) - '0') * scale, y + (at.charAt(1) - '0') * scale));
                }
                paths.add(CurvePath.through(points, false));
            }
        }
        return paths;
    }
}
