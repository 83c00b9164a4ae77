package puzzleworkshop.geometry.path;

import puzzleworkshop.geometry.Point;

/** Writes a path as SVG path data: M, L, C, Z with absolute coordinates, thousandths of a millimetre. */
final class PathText {

    private PathText() {}

    static String of(CurvePath path) {
        StringBuilder text = new StringBuilder(path.segments().size() * 40);
        text.append('M');
        point(text, path.start());
        int last = path.segments().size() - 1;
        for (int i = 0; i <= last; i++) {
            switch (path.segments().get(i)) {
                case Segment.Line line -> {
                    if (i == last && path.closed()) {
                        break; // Z draws it
                    }
                    text.append('L');
                    point(text, line.to());
                }
                case Segment.Cubic cubic -> {
                    text.append('C');
                    point(text, cubic.control1());
                    text.append(' ');
                    point(text, cubic.control2());
                    text.append(' ');
                    point(text, cubic.to());
                }
            }
        }
        return path.closed() ? text.append('Z').toString() : text.toString();
    }

    private static void point(StringBuilder text, Point point) {
        number(text, point.xMm());
        text.append(' ');
        number(text, point.yMm());
    }

    /** Shortest text of a number rounded to thousandths; faster than a formatter and free of locales. */
    private static void number(StringBuilder text, double value) {
        long thousandths = Math.round(value * 1000);
        if (thousandths < 0) {
            text.append('-');
            thousandths = -thousandths;
        }
        text.append(thousandths / 1000);
        int rest = (int) (thousandths % 1000);
        if (rest != 0) {
            String digits = Integer.toString(1000 + rest);
            int end = digits.length();
            while (digits.charAt(end - 1) == '0') {
                end--;
            }
            text.append('.').append(digits, 1, end);
        }
    }
}
