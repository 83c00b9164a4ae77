package puzzleworkshop.display;

import static org.assertj.core.api.Assertions.assertThat;

import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;

/** Read back by jsoup, which parses as the HTML standard tells browsers to. */
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class MarkupTest {

    private static final String NASTY = "<b>R&D</b> \"5'\" <script>alert(1)</script> &amp; é";

    @Test
    void what_people_typed_is_words_and_never_markup() {
        Markup row = Markup.div(
                "row",
                Markup.span("who", NASTY),
                Markup.words(NASTY),
                Markup.link("orders/1", NASTY).with("title", NASTY));
        Element read = Jsoup.parseBodyFragment(row.html()).body().child(0);
        assertThat(read.getAllElements()).extracting(Element::tagName).containsExactly("div", "span", "a");
        assertThat(read.selectFirst("span").wholeText()).isEqualTo(NASTY);
        assertThat(read.selectFirst("a").wholeText()).isEqualTo(NASTY);
        assertThat(read.selectFirst("a").attr("title")).isEqualTo(NASTY);
        assertThat(read.wholeText()).isEqualTo(NASTY + NASTY + NASTY);
    }

    @Test
    void shown_it_is_one_element_which_is_the_outermost_of_the_markup() {
        Still still = new Still(Markup.of("a", "card open", Markup.span("who", "Ada"), Markup.span("what", "4 < 5"))
                .with("href", "orders/1"));
        assertThat(still.getElement().getTag()).isEqualTo("a");
        assertThat(still.getElement().getChildCount()).isZero();
        assertThat(still.getClassNames()).containsExactly("card", "open");
        assertThat(still.getElement().getAttribute("href")).isEqualTo("orders/1");
        assertThat(still.words()).isEqualTo("Ada 4 < 5");
        Element read =
                Jsoup.parseBodyFragment(still.getElement().getOuterHTML()).selectFirst("a.card.open");
        assertThat(read.select("span")).extracting(Element::text).containsExactly("Ada", "4 < 5");
    }

    @Test
    void a_style_stays_one_that_can_be_changed_from_the_server() {
        Still still = new Still(Markup.div("bar").with("style", "aspect-ratio: 1.5; width: 20%"));
        assertThat(still.getStyle().get("aspect-ratio")).isEqualTo("1.5");
        assertThat(still.getStyle().get("width")).isEqualTo("20%");
    }

    @Test
    void a_picture_has_nothing_inside_and_no_end() {
        Markup image = Markup.of("img", "").with("src", "a.jpg").with("alt", "A \"view\"");
        assertThat(image.html()).isEqualTo("<img src=\"a.jpg\" alt=\"A &quot;view&quot;\">");
    }

    @Test
    void attributes_are_added_to_a_copy() {
        Markup cell = Markup.span("pw-number", "7");
        Markup headed = cell.with("data-head", "Sold");
        assertThat(cell.html()).isEqualTo("<span class=\"pw-number\">7</span>");
        assertThat(headed.html()).isEqualTo("<span class=\"pw-number\" data-head=\"Sold\">7</span>");
    }
}
