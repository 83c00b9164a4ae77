package puzzleworkshop.display;

import java.util.Locale;

/**
 * Writes one SVG drawing in units of its own (millimetres, as a rule) with a title and a description for screen
 * readers. Everything that comes from people is escaped. Classes carry the look; only what is computed is written here.
 */
public final class Svg {

    private final StringBuilder body = new StringBuilder();
    private final String open;

    private Svg(String open) {
        this.open = open;
    }

    /** A drawing over the given part of the plane; y runs down. */
    public static Svg of(double x, double y, double width, double height, String title, String description) {
        return new Svg(
                "<svg xmlns='http://www.w3.org/2000/svg' class='pw-drawing' role='img' viewBox='" + n(x) + " " + n(y)
                        + " " + n(width) + " " + n(height) + "'><title>" + escape(title) + "</title><desc>"
                        + escape(description)
                        + "</desc>");
    }

    public Svg rect(double x, double y, double width, double height, String cssClass) {
        body.append("<rect x='")
                .append(n(x))
                .append("' y='")
                .append(n(y))
                .append("' width='")
                .append(n(width))
                .append("' height='")
                .append(n(height))
                .append("' class='")
                .append(escape(cssClass))
                .append("'/>");
        return this;
    }

    public Svg path(String data, String cssClass) {
        body.append("<path d='")
                .append(escape(data))
                .append("' class='")
                .append(escape(cssClass))
                .append("'/>");
        return this;
    }

    public Svg line(double x1, double y1, double x2, double y2, String cssClass) {
        body.append("<line x1='")
                .append(n(x1))
                .append("' y1='")
                .append(n(y1))
                .append("' x2='")
                .append(n(x2))
                .append("' y2='")
                .append(n(y2))
                .append("' class='")
                .append(escape(cssClass))
                .append("'/>");
        return this;
    }

    /** A text in drawing units, anchored start, middle or end. */
    public Svg text(double x, double y, double size, String anchor, String text, String cssClass) {
        body.append("<text x='")
                .append(n(x))
                .append("' y='")
                .append(n(y))
                .append("' style='font-size:")
                .append(n(size))
                .append("px' text-anchor='")
                .append(anchor)
                .append("' class='")
                .append(escape(cssClass))
                .append("'>")
                .append(escape(text))
                .append("</text>");
        return this;
    }

    public Svg image(double x, double y, double width, double height, String address) {
        body.append("<image x='")
                .append(n(x))
                .append("' y='")
                .append(n(y))
                .append("' width='")
                .append(n(width))
                .append("' height='")
                .append(n(height))
                .append("' href='")
                .append(escape(address))
                .append("' preserveAspectRatio='xMidYMid slice'/>");
        return this;
    }

    /** Opens a group; close it with {@link #end()}. */
    public Svg group(String cssClass, String transform) {
        body.append("<g class='").append(escape(cssClass)).append("'");
        if (!transform.isEmpty()) {
            body.append(" transform='").append(escape(transform)).append("'");
        }
        body.append(">");
        return this;
    }

    public Svg end() {
        body.append("</g>");
        return this;
    }

    /** Markup made elsewhere that is known to be well formed, such as a pattern of hatching. */
    public Svg raw(String markup) {
        body.append(markup);
        return this;
    }

    public String markup() {
        return open + body + "</svg>";
    }

    /** A number as SVG wants it: a point, at most three digits, no exponent. */
    public static String n(double value) {
        String text = String.format(Locale.ROOT, "%.3f", value);
        int end = text.length();
        while (text.charAt(end - 1) == '0') {
            end--;
        }
        if (text.charAt(end - 1) == '.') {
            end--;
        }
        String shortened = text.substring(0, end);
        return shortened.equals("-0") ? "0" : shortened;
    }

    public static String escape(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("'", "&#39;")
                .replace("\"", "&quot;");
    }
}
