package puzzleworkshop.papers.ticket;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import puzzleworkshop.display.PaperFonts;

@DisplayNameGeneration(ReplaceUnderscores.class)
class TicketBoardTest {

    private static final String WORDS = "322 × 222 mm";

    @Test
    void the_size_stands_inside_its_blank_however_small_that_is_drawn() {
        for (float across = 20; across < 120; across += 7) {
            for (float down = 20; down < 120; down += 7) {
                TicketBoard.Lettering letters = TicketBoard.Lettering.of(WORDS, across, down);
                assertThat(PaperFonts.base().getWidthPoint(WORDS, letters.points()))
                        .isLessThan(letters.turned() ? down : across);
            }
        }
    }

    @Test
    void words_are_turned_where_the_blank_stands_upright_and_only_then() {
        assertThat(TicketBoard.Lettering.of(WORDS, 49, 70).turned()).isTrue();
        assertThat(TicketBoard.Lettering.of(WORDS, 120, 150).turned()).isFalse();
        assertThat(TicketBoard.Lettering.of(WORDS, 120, 150).points()).isEqualTo(8);
        assertThat(TicketBoard.Lettering.of(WORDS, 30, 20).turned()).isFalse();
    }
}
