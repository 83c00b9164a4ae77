package puzzleworkshop.pattern;

import java.util.ArrayList;
import java.util.List;
import java.util.StringTokenizer;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.geometry.path.Segment;

/**
 * A shape's outline as text that gives back every double to its last bit: M, L, C and Z as in an SVG path, numbers as
 * {@link Double#toString}, in millimetres. A rounded text would move a line by a hair and so give another pattern.
 */
public final class ShapeText {

    private ShapeText() {}

    public static String of(CurvePath outline) {
        StringBuilder text = new StringBuilder();
        point(text.append('M'), outline.start());
        for (Segment segment : outline.segments()) {
            switch (segment) {
                case Segment.Line line -> point(text.append(" L"), line.to());
                case Segment.Cubic cubic -> {
                    point(text.append(" C"), cubic.control1());
                    point(text, cubic.control2());
                    point(text, cubic.to());
                }
            }
        }
        return text.append(" Z").toString();
    }

    /** @throws IllegalArgumentException when it is not such a text */
    public static CurvePath read(String text) {
        StringTokenizer words = new StringTokenizer(text);
        expect(words, "M");
        Point start = point(words);
        List<Segment> segments = new ArrayList<>();
        while (words.hasMoreTokens()) {
            switch (words.nextToken()) {
                case "L" -> segments.add(new Segment.Line(point(words)));
                case "C" -> segments.add(new Segment.Cubic(point(words), point(words), point(words)));
                case "Z" -> {
                    return new CurvePath(start, segments, true);
                }
                default -> throw new IllegalArgumentException("Not the outline of a shape: " + text);
            }
        }
        throw new IllegalArgumentException("The outline of a shape does not end: " + text);
    }

    private static void expect(StringTokenizer words, String word) {
        if (!words.hasMoreTokens() || !words.nextToken().equals(word)) {
            throw new IllegalArgumentException("The outline of a shape begins with " + word);
        }
    }

    private static void point(StringBuilder text, Point point) {
        text.append(' ').append(point.xMm()).append(' ').append(point.yMm());
    }

    private static Point point(StringTokenizer words) {
        return Point.of(Double.parseDouble(words.nextToken()), Double.parseDouble(words.nextToken()));
    }
}
