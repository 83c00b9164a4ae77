package puzzleworkshop.pricing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pricing.cost.PriceQuestion;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class KeptPriceIT {

    @Autowired
    Pricing pricing;

    private KeptPrice price() {
        PriceQuestion question = pricing.typical(Size.mm(300, 200), 48);
        return new KeptPrice(question, pricing.quote(question));
    }

    @Test
    void a_price_is_read_as_it_was_written_and_says_its_version() {
        KeptPrice price = price();
        assertThat(price.toJson()).startsWith("{\"version\":1,");
        assertThat(KeptPrice.fromJson(price.toJson())).hasToString(price.toString());
    }

    @Test
    void what_was_written_before_documents_said_their_version_is_the_first_one() {
        KeptPrice price = price();
        assertThat(KeptPrice.fromJson(price.toJson().replace("\"version\":1,", "")))
                .hasToString(price.toString());
    }

    @Test
    void a_price_of_another_version_or_with_unknown_parts_is_refused_and_never_read_as_nothing() {
        String json = price().toJson();
        assertThatThrownBy(() -> KeptPrice.fromJson(json.replace("\"version\":1,", "\"version\":7,")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("pricing.kept.version");
        assertThatThrownBy(() -> KeptPrice.fromJson(json.replace("\"version\":1,", "\"version\":7,\"tip\":3,")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("pricing.kept.version");
        assertThatThrownBy(() -> KeptPrice.fromJson(json.replace("\"question\":{", "\"question\":{\"tip\":3,")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("pricing.kept.unreadable");
        assertThatThrownBy(() -> KeptPrice.fromJson("{}"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("pricing.kept.unreadable");
    }

    /** Every price in the demo workshops that earlier programs left: read in full, and what is to pay is there. */
    @Test
    void prices_that_earlier_programs_wrote_are_read() throws IOException, URISyntaxException {
        int read = 0;
        Path folder = Path.of(
                Objects.requireNonNull(getClass().getResource("/backups")).toURI());
        try (Stream<Path> backups = Files.list(folder)) {
            for (Path backup : backups.toList()) {
                try (ZipFile zip = new ZipFile(backup.toFile())) {
                    List<String> rows = new String(
                                    zip.getInputStream(zip.getEntry("tables/customer_order"))
                                            .readAllBytes(),
                                    StandardCharsets.UTF_8)
                            .lines()
                            .toList();
                    int column = List.of(rows.getFirst().split("\\s*,\\s*")).indexOf("kept_price");
                    for (String row : rows.subList(1, rows.size())) {
                        // In PostgreSQL's text format a backslash is doubled.
                        String json = row.split("\t", -1)[column].replace("\\\\", "\\");
                        assertThat(KeptPrice.fromJson(json).answer().toPay().isPositive())
                                .as(backup.getFileName() + " " + json)
                                .isTrue();
                        read++;
                    }
                }
            }
        }
        assertThat(read).isGreaterThan(20);
    }
}
