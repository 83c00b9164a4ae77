package puzzleworkshop.letters.ui;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

@DisplayNameGeneration(ReplaceUnderscores.class)
class LateLinkTest {

    private static final String LINK = "https://puzzles.example/p/abc";
    private static final String PROPOSED = "Dear Ada,\n\nhere is your picture:\n\n" + LINK + "\n\nPlease look.\n\nBye";

    @Test
    void it_stands_where_the_proposal_has_it_and_everything_typed_stays() {
        assertThat(LateLink.into(
                        "Dear Ada,\n\nI liked our talk. here is your picture:\n\nPlease look.\n\nSee you",
                        PROPOSED,
                        LINK))
                .isEqualTo("Dear Ada,\n\nI liked our talk. here is your picture:\n\n" + LINK
                        + "\n\nPlease look.\n\nSee you");
    }

    @Test
    void it_stands_before_what_follows_when_what_goes_before_was_changed() {
        assertThat(LateLink.into("Hello!\n\nPlease look.\n\nBye", PROPOSED, LINK))
                .isEqualTo("Hello!\n\n" + LINK + "\n\nPlease look.\n\nBye");
    }

    @Test
    void it_stands_at_the_end_when_nothing_of_the_proposal_is_left() {
        assertThat(LateLink.into("My own words", PROPOSED, LINK)).isEqualTo("My own words\n\n" + LINK);
    }

    @Test
    void on_a_line_with_words_it_follows_them() {
        assertThat(LateLink.into("Hello\n\nLook here:", "Dear Ada\n\nLook here: " + LINK, LINK))
                .isEqualTo("Hello\n\nLook here: " + LINK);
    }

    @Test
    void it_stands_there_once() {
        assertThat(LateLink.into(PROPOSED, PROPOSED, LINK)).isEqualTo(PROPOSED);
    }
}
