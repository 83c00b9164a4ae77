package puzzleworkshop.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** The text format is that of PostgreSQL's documentation, COPY, "Text Format". */
class BoundedFieldsTest {

    private static final int[] NUMBER_TEXT_NUMBER = {4, BoundedFields.UNBOUNDED, 4};

    @Test
    void what_fits_goes_through_as_it_is_however_it_is_read() throws IOException {
        String rows = "1234\t" + "long ".repeat(5000) + "\t\\N\n\n12\ta\\tb\\nc\t3\n\\.\n";
        assertThat(new String(rows(rows).readAllBytes(), StandardCharsets.UTF_8))
                .isEqualTo(rows);
        StringBuilder one = new StringBuilder();
        InputStream in = rows(rows);
        for (int c = in.read(); c >= 0; c = in.read()) {
            one.append((char) c);
        }
        assertThat(one).hasToString(rows);
    }

    @Test
    void a_number_longer_than_any_number_stops_the_rows_before_the_rest_is_read() {
        for (String before : new String[] {"", "1\tx\t2\n", "1\tx\t"}) {
            ByteArrayInputStream all = bytes(before + "9".repeat(80_000));
            InputStream in = new BoundedFields(all, NUMBER_TEXT_NUMBER);
            byte[] part = new byte[64];
            assertThatThrownBy(() -> {
                        while (in.read(part, 0, part.length) > 0) {
                            // goes on until it is stopped
                        }
                    })
                    .isInstanceOf(IOException.class)
                    .hasMessageContaining("too long");
            assertThat(all.available()).isGreaterThan(79_000);
        }
    }

    @Test
    void more_fields_than_columns_stop_the_rows() {
        assertThatThrownBy(() -> rows("1\tx\t2\t3\n").readAllBytes())
                .isInstanceOf(IOException.class)
                .hasMessageContaining("more fields");
    }

    private static InputStream rows(String text) {
        return new BoundedFields(bytes(text), NUMBER_TEXT_NUMBER);
    }

    private static ByteArrayInputStream bytes(String text) {
        return new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8));
    }
}
