package puzzleworkshop.display;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The signs are those of OWASP's page 'CSV Injection' (owasp.org/www-community/attacks/CSV_Injection), its full-width ones too. */
class CsvCellTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "=1+1",
                "+1",
                "-1",
                "@SUM(A1)",
                "\t=1",
                "two lines\n=cmd|'/c calc'!A0",
                "\r\n=1",
                "a\n\n+1\n-2",
                "\uFF1D1"
            })
    void no_line_of_a_cell_begins_a_formula_and_the_text_comes_back(String text) {
        String cell = CsvCell.guarded(text);
        assertThat(cell.split("[\\r\\n]")).noneMatch(line -> line.matches("(?s)[=+\\-@\\t\uFF1D\uFF0B\uFF0D\uFF20].*"));
        assertThat(CsvCell.unguarded(cell)).isEqualTo(text);
    }

    @Test
    void plain_texts_stay_as_they_are() {
        for (String text : new String[] {"", "Shelf B2", "a = b", "'quoted'", "two\nlines", "8-10"}) {
            assertThat(CsvCell.guarded(text)).isEqualTo(text);
        }
    }
}
