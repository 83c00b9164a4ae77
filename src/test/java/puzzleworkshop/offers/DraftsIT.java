package puzzleworkshop.offers;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class DraftsIT {

    @Autowired
    Drafts drafts;

    @Autowired
    JdbcClient jdbc;

    @Test
    void each_person_has_one_draft_until_it_is_saved_or_a_month_old() {
        drafts.keep("Robin", Map.of("Width", "200.0"));
        drafts.keep("Robin", Map.of("Width", "300.0", "Note", "hares"));
        drafts.keep("Mara", Map.of("Width", "150.0"));
        assertThat(drafts.find("Robin").orElseThrow().fields()).isEqualTo(Map.of("Width", "300.0", "Note", "hares"));
        drafts.drop("Robin");
        assertThat(drafts.find("Robin")).isEmpty();
        assertThat(drafts.find("Mara")).isPresent();
        jdbc.sql("update order_form_draft set at = at - interval '31 days'").update();
        assertThat(drafts.find("Mara")).isEmpty();
    }

    @Test
    void what_no_database_keeps_and_what_is_endless_is_left_out() {
        drafts.keep("Ida", Map.of("Note", "a\0b", "Long", "x".repeat(20_000), "Name", "Ida"));
        assertThat(drafts.find("Ida").orElseThrow().fields()).isEqualTo(Map.of("Name", "Ida"));
    }
}
