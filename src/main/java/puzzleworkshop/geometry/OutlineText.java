package puzzleworkshop.geometry;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * An outline as text, to keep and to exchange: the outer ring as {@code x,y x,y …} in mm, then each bad area after a
 * semicolon. Numbers to a millionth of a millimetre.
 */
public final class OutlineText {

    private OutlineText() {}

    public static String write(Outline outline) {
        StringBuilder text = new StringBuilder();
        write(outline.outer(), text);
        for (List<Point> bad : outline.badAreas()) {
            text.append("; ");
            write(bad, text);
        }
        return text.toString();
    }

    /**
     * Reads what {@link #write} wrote.
     *
     * @throws ImpossibleOutline when the text is not such a list of corners, or names no possible outline
     */
    public static Outline read(String text) {
        List<List<Point>> rings = rings(text);
        return Outline.of(rings.getFirst(), rings.subList(1, rings.size()));
    }

    /** Like {@link #read}, for shapes the program made itself: parts that touch themselves are mended, not refused. */
    public static Outline readMended(String text) {
        List<List<Point>> rings = rings(text);
        return Outline.mended(rings.getFirst(), rings.subList(1, rings.size()));
    }

    private static List<List<Point>> rings(String text) {
        List<List<Point>> rings = new ArrayList<>();
        for (String ring : text.split(";")) {
            List<Point> spots = new ArrayList<>();
            for (String pair : ring.strip().split("\\s+")) {
                int comma = pair.indexOf(',');
                try {
                    spots.add(new Point(
                            Double.parseDouble(pair.substring(0, Math.max(0, comma))),
                            Double.parseDouble(pair.substring(comma + 1))));
                } catch (IllegalArgumentException notFinite) {
                    throw new ImpossibleOutline(null, "geometry.outline.text", pair);
                }
            }
            rings.add(spots);
        }
        return rings;
    }

    private static void write(List<Point> ring, StringBuilder text) {
        for (int i = 0; i < ring.size(); i++) {
            text.append(i == 0 ? "" : " ")
                    .append(number(ring.get(i).xMm()))
                    .append(',')
                    .append(number(ring.get(i).yMm()));
        }
    }

    private static String number(double value) {
        String digits = String.format(Locale.ROOT, "%.6f", value);
        String short_ = digits.replaceAll("0+$", "").replaceAll("\\.$", "");
        return short_.equals("-0") ? "0" : short_;
    }
}
