package puzzleworkshop.display;

import java.util.Locale;

/**
 * Writes one SVG drawing in units of its own (millimetres, as a rule) with a title and a description for screen
 * readers. Everything that comes from people is escaped. Classes carry the look; only what is computed is written here.
 */
public final class Svg {

    /** Beyond it a double has no thousandths worth telling. */
    private static final double MOST_BY_THOUSANDTHS = 1e12;

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
        begin("rect")
                .at("x", x)
                .at("y", y)
                .at("width", width)
                .at("height", height)
                .with("class", cssClass);
        return close();
    }

    public Svg path(String data, String cssClass) {
        return begin("path").with("d", data).with("class", cssClass).close();
    }

    public Svg line(double x1, double y1, double x2, double y2, String cssClass) {
        begin("line").at("x1", x1).at("y1", y1).at("x2", x2).at("y2", y2).with("class", cssClass);
        return close();
    }

    /** A text in drawing units, anchored start, middle or end. */
    public Svg text(double x, double y, double size, String anchor, String text, String cssClass) {
        begin("text").at("x", x).at("y", y).with("style", "font-size:" + n(size) + "px");
        with("text-anchor", anchor).with("class", cssClass);
        body.append('>').append(escape(text)).append("</text>");
        return this;
    }

    public Svg image(double x, double y, double width, double height, String address) {
        begin("image").at("x", x).at("y", y).at("width", width).at("height", height);
        return with("href", address)
                .with("preserveAspectRatio", "xMidYMid slice")
                .close();
    }

    private Svg begin(String element) {
        body.append('<').append(element);
        return this;
    }

    private Svg at(String attribute, double value) {
        body.append(' ').append(attribute).append("='").append(n(value)).append('\'');
        return this;
    }

    private Svg with(String attribute, String value) {
        body.append(' ').append(attribute).append("='").append(escape(value)).append('\'');
        return this;
    }

    private Svg close() {
        body.append("/>");
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
        if (!(Math.abs(value) < MOST_BY_THOUSANDTHS)) {
            return String.format(Locale.ROOT, "%.0f", value);
        }
        long thousandths = Math.round(Math.abs(value) * 1000);
        String sign = value < 0 && thousandths != 0 ? "-" : "";
        long behind = thousandths % 1000;
        if (behind == 0) {
            return sign + thousandths / 1000;
        }
        String digits = Long.toString(1000 + behind).substring(1);
        int end = digits.length();
        while (digits.charAt(end - 1) == '0') {
            end--;
        }
        return sign + thousandths / 1000 + "." + digits.substring(0, end);
    }

    public static String escape(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("'", "&#39;")
                .replace("\"", "&quot;");
    }
}
