package puzzleworkshop.shell;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Orders, customers, sheets and supplies by any words that stand on them, in one question to the database. */
@Service
public class Findings {

    private static final int MOST = 20;
    private static final int MOST_WORDS = 8;
    private static final int LONGEST = 200;

    /** What can be found; the first stand first among equals. */
    public enum Kind {
        ORDER("orders/"),
        CUSTOMER("customers/"),
        SHEET("sheets/number/"),
        SUPPLY("supplies");

        private final String place;

        Kind(String place) {
            this.place = place;
        }

        public String textKey() {
            return "shell.find." + name();
        }
    }

    /**
     * One thing that was found.
     *
     * @param address where it is shown, below the program's own
     * @param title its number or name
     * @param about a second line; may be empty
     */
    public record Found(Kind kind, String address, String title, String about) {}

    private final JdbcClient jdbc;

    Findings(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * At most twenty that hold every word that was typed, as parts of words, whatever their letters' case. What is called
     * exactly so comes first, then what begins so, then the newest.
     */
    @Transactional(readOnly = true)
    public List<Found> of(String typed) {
        String plain = typed.strip().toLowerCase(Locale.ROOT).replace("\0", "");
        if (plain.isEmpty() || plain.length() > LONGEST) {
            return List.of();
        }
        String[] words = Arrays.stream(plain.split("\\s+"))
                .limit(MOST_WORDS)
                .map(word -> "%" + escaped(word) + "%")
                .toArray(String[]::new);
        return jdbc.sql("""
            select kind, address, title, about from findable
            where words like all (:words)
            order by lower(title) <> :whole, lower(title) not like :beginning,
                array_position(array['ORDER', 'CUSTOMER', 'SHEET', 'SUPPLY'], kind), at desc nulls last, id desc
            limit :most
            """)
                .param("words", words)
                .param("whole", plain)
                .param("beginning", escaped(plain) + "%")
                .param("most", MOST)
                .query((row, n) -> {
                    Kind kind = Kind.valueOf(row.getString("kind"));
                    return new Found(
                            kind,
                            kind.place + row.getString("address"),
                            row.getString("title"),
                            row.getString("about"));
                })
                .list();
    }

    private static String escaped(String text) {
        return text.replace("\\", "\\\\").replace("%", "\\%").replace("_", "\\_");
    }
}
