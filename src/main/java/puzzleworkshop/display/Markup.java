package puzzleworkshop.display;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.springframework.web.util.HtmlUtils;

/**
 * A part of a page that only stands there: elements and words that nobody presses or types into. Flow keeps each element
 * and each text of a component in memory, compares it and sends it by itself, which is most of what a page with hundreds
 * of figures takes; markup is written at once and shown by one {@link Still}. What comes from people is escaped.
 */
public final class Markup {

    /** @param name of an attribute of ours, never from people */
    record Attribute(String name, String value) {}

    private static final String UTF_8 = "UTF-8";

    private final String tag;
    private final List<Attribute> attributes;
    private final String inside;
    private final String words;

    private Markup(String tag, List<Attribute> attributes, String inside, String words) {
        this.tag = tag;
        this.attributes = attributes;
        this.inside = inside;
        this.words = words;
    }

    /**
     * An element around others.
     *
     * @param tag of HTML
     * @param cssClasses with blanks between, may be empty
     */
    public static Markup of(String tag, String cssClasses, Markup... inside) {
        return of(tag, cssClasses, List.of(inside));
    }

    public static Markup of(String tag, String cssClasses, List<Markup> inside) {
        return new Markup(tag, classed(cssClasses), html(inside), said(inside));
    }

    /** An element around words, which may come from people. */
    public static Markup of(String tag, String cssClasses, String words) {
        return new Markup(tag, classed(cssClasses), HtmlUtils.htmlEscape(words, UTF_8), words);
    }

    /** Words between elements, which may come from people. */
    public static Markup words(String words) {
        return new Markup("", List.of(), HtmlUtils.htmlEscape(words, UTF_8), words.strip());
    }

    public static Markup div(String cssClasses, Markup... inside) {
        return of("div", cssClasses, inside);
    }

    public static Markup div(String cssClasses, List<Markup> inside) {
        return of("div", cssClasses, inside);
    }

    public static Markup span(String cssClasses, String words) {
        return of("span", cssClasses, words);
    }

    public static Markup span(String words) {
        return span("", words);
    }

    /** @param address within the program, made by us */
    public static Markup link(String address, String words) {
        return of("a", "", words).with("href", address);
    }

    /** A drawing of ours, as it is. */
    public static Markup drawing(Svg drawing) {
        return new Markup("", List.of(), drawing.markup(), "");
    }

    /** A mark of ours within a line, as it is: nothing from people may be in it. */
    static Markup mark(String svg) {
        return new Markup("span", classed("pw-mark"), svg, "");
    }

    /** The same with one more attribute. */
    public Markup with(String name, String value) {
        return new Markup(
                tag,
                Stream.concat(attributes.stream(), Stream.of(new Attribute(name, value)))
                        .toList(),
                inside,
                words);
    }

    /** What a person reads in it, with blanks between the parts. */
    public String words() {
        return words;
    }

    String tag() {
        return tag;
    }

    List<Attribute> attributes() {
        return attributes;
    }

    String inside() {
        return inside;
    }

    /** As it goes to the browser. */
    public String html() {
        if (tag.isEmpty()) {
            return inside;
        }
        StringBuilder html = new StringBuilder(inside.length() + 40).append('<').append(tag);
        attributes.forEach(attribute -> html.append(' ')
                .append(attribute.name())
                .append("=\"")
                .append(HtmlUtils.htmlEscape(attribute.value(), UTF_8))
                .append('"'));
        html.append('>').append(inside);
        // an image has no end and nothing inside
        return tag.equals("img")
                ? html.toString()
                : html.append("</").append(tag).append('>').toString();
    }

    static String html(List<Markup> parts) {
        return parts.stream().map(Markup::html).collect(Collectors.joining());
    }

    static String said(List<Markup> parts) {
        return parts.stream()
                .map(Markup::words)
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(" "));
    }

    private static List<Attribute> classed(String cssClasses) {
        return cssClasses.isEmpty() ? List.of() : List.of(new Attribute("class", cssClasses));
    }
}
