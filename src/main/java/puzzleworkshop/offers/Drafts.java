package puzzleworkshop.offers;

import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * What a person had typed into New order and not saved: one draft each, so that a reload, an empty battery or the end of a
 * sign-in loses nothing. It holds no place, no number and no price, and is forgotten after a month, as its picture is.
 */
@Service
public class Drafts {

    private static final Duration KEPT = Duration.ofDays(30);
    private static final int MOST_FIELDS = 200;
    private static final int LONGEST = 10_000;

    private final JdbcClient jdbc;
    private final Clock clock;

    Drafts(JdbcClient jdbc, Clock clock) {
        this.jdbc = jdbc;
        this.clock = clock;
    }

    /** A draft with what stood in each field. */
    public record Draft(Instant at, Map<String, String> fields) {}

    /** In place of the person's last one. */
    @Transactional
    public void keep(String person, Map<String, String> fields) {
        Map<String, String> kept = new LinkedHashMap<>();
        fields.entrySet().stream()
                .filter(field ->
                        field.getValue().length() <= LONGEST && field.getValue().indexOf('\0') < 0)
                .limit(MOST_FIELDS)
                .forEach(field -> kept.put(field.getKey(), field.getValue()));
        jdbc.sql("""
            insert into order_form_draft (person, at, names, contents) values (:person, :at, :names, :contents)
            on conflict on constraint order_form_draft_key
            do update set at = excluded.at, names = excluded.names, contents = excluded.contents
            """)
                .param("person", person)
                .param("at", Timestamp.from(clock.instant()))
                .param("names", kept.keySet().toArray(String[]::new))
                .param("contents", kept.values().toArray(String[]::new))
                .update();
    }

    @Transactional(readOnly = true)
    public Optional<Draft> find(String person) {
        return jdbc.sql("select at, names, contents from order_form_draft where person = :person and at > :since")
                .param("person", person)
                .param("since", Timestamp.from(clock.instant().minus(KEPT)))
                .query((row, n) -> {
                    String[] names = (String[]) row.getArray("names").getArray();
                    String[] contents = (String[]) row.getArray("contents").getArray();
                    Map<String, String> fields = new LinkedHashMap<>();
                    for (int i = 0; i < names.length; i++) {
                        fields.put(names[i], contents[i]);
                    }
                    return new Draft(row.getTimestamp("at").toInstant(), fields);
                })
                .optional();
    }

    /** It was saved, or is not wanted any more. */
    @Transactional
    public void drop(String person) {
        jdbc.sql("delete from order_form_draft where person = :person or at <= :since")
                .param("person", person)
                .param("since", Timestamp.from(clock.instant().minus(KEPT)))
                .update();
    }
}
