package puzzleworkshop.support;

import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import puzzleworkshop.display.Still;

/** What stands in the still parts of a screen, as jsoup reads the HTML that the browser is given. */
public final class StillHtml {

    private StillHtml() {}

    /**
     * The words of every element that the selector finds.
     *
     * @param parts as a test finds them: {@code find(Still.class).all()}
     * @param selector of CSS
     */
    public static List<String> words(List<? extends Still> parts, String selector) {
        return parts.stream()
                .flatMap(part -> all(part, selector).stream())
                .map(Element::text)
                .toList();
    }

    /** Every element of one part that the selector finds. */
    public static List<Element> all(Still part, String selector) {
        return Jsoup.parseBodyFragment(part.getElement().getOuterHTML()).body().select(selector);
    }
}
