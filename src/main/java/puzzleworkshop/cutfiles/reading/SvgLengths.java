package puzzleworkshop.cutfiles.reading;

import java.awt.geom.AffineTransform;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Element;

/**
 * Lengths and view boxes of SVG. Absolute units are those of CSS (Values and Units, chapter 6: 1in = 2.54cm = 96px,
 * 1pt = 1/72 in, 1pc = 12 pt, 1Q = 1/40 cm); a file drawn at another density of pixels is read with that.
 */
final class SvgLengths {

    private static final Pattern LENGTH =
            Pattern.compile("\\s*([+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?)\\s*([a-zA-Z%]*)\\s*");
    private static final double CSS_PX_PER_INCH = 96;

    private final double pxPerInch;

    SvgLengths(double pxPerInch) {
        this.pxPerInch = pxPerInch;
    }

    double pxPerInch() {
        return pxPerInch;
    }

    double mmPerPx() {
        return 25.4 / pxPerInch;
    }

    /**
     * What a view box does.
     *
     * @param width of the viewport in px; 0 when nothing says it
     * @param contents from the contents' user units to the px of the viewport
     * @param stated whether the size comes with a real unit
     */
    record Viewport(double width, double height, AffineTransform contents, boolean stated) {}

    /** @param override element whose width and height count before the element's own (a use of a symbol), or null */
    Viewport viewport(Element element, Element override) {
        double[] box = viewBox(element);
        String widthText = text(element, override, "width");
        String heightText = text(element, override, "height");
        double width = px(widthText, -1);
        double height = px(heightText, -1);
        boolean stated = real(widthText) || real(heightText);
        if (box == null) {
            return new Viewport(Math.max(0, width), Math.max(0, height), new AffineTransform(), stated);
        }
        if (width < 0 && height < 0) {
            width = box[2];
            height = box[3];
        } else if (width < 0) {
            width = height * box[2] / box[3];
        } else if (height < 0) {
            height = width * box[3] / box[2];
        }
        return new Viewport(
                width, height, fitted(box, width, height, element.getAttribute("preserveAspectRatio")), stated);
    }

    private static AffineTransform fitted(double[] box, double width, double height, String ratio) {
        double sx = width / box[2];
        double sy = height / box[3];
        double dx = 0;
        double dy = 0;
        if (!ratio.strip().startsWith("none")) {
            double scale = ratio.contains("slice") ? Math.max(sx, sy) : Math.min(sx, sy);
            sx = scale;
            sy = scale;
            double spareX = width - box[2] * scale;
            double spareY = height - box[3] * scale;
            dx = ratio.contains("xMin") ? 0 : ratio.contains("xMax") ? spareX : spareX / 2;
            dy = ratio.contains("YMin") ? 0 : ratio.contains("YMax") ? spareY : spareY / 2;
        }
        return new AffineTransform(sx, 0, 0, sy, dx - box[0] * sx, dy - box[1] * sy);
    }

    private static double[] viewBox(Element element) {
        String text = element.getAttribute("viewBox").strip();
        if (text.isEmpty()) {
            return null;
        }
        String[] parts = text.split("[\\s,]+");
        if (parts.length != 4) {
            throw new IllegalArgumentException("A view box has four numbers: " + text);
        }
        double[] box = new double[4];
        for (int i = 0; i < 4; i++) {
            box[i] = Double.parseDouble(parts[i]);
        }
        if (!(box[2] > 0) || !(box[3] > 0)) {
            throw new IllegalArgumentException("A view box needs width and height: " + text);
        }
        return box;
    }

    private static String text(Element element, Element override, String name) {
        return override != null && override.hasAttribute(name)
                ? override.getAttribute(name)
                : element.getAttribute(name);
    }

    private static boolean real(String text) {
        Matcher matcher = LENGTH.matcher(text);
        return matcher.matches()
                && switch (matcher.group(2).toLowerCase(Locale.ROOT)) {
                    case "mm", "cm", "in", "pt", "pc", "q" -> true;
                    default -> false;
                };
    }

    double px(Element element, String attribute, double otherwise) {
        return px(element.getAttribute(attribute), otherwise);
    }

    /** In px; the given value where the text is empty, a share of something, or 'auto'. */
    private double px(String text, double otherwise) {
        Matcher matcher = LENGTH.matcher(text);
        if (!matcher.matches()) {
            return otherwise;
        }
        double value = Double.parseDouble(matcher.group(1));
        return switch (matcher.group(2).toLowerCase(Locale.ROOT)) {
            case "", "px" -> value;
            case "mm" -> value / 25.4 * pxPerInch;
            case "cm" -> value / 2.54 * pxPerInch;
            case "q" -> value / 101.6 * pxPerInch;
            case "in" -> value * pxPerInch;
            case "pt" -> value / 72 * pxPerInch;
            case "pc" -> value / 6 * pxPerInch;
            case "em", "rem" -> value * 16 * pxPerInch / CSS_PX_PER_INCH;
            default -> otherwise;
        };
    }
}
