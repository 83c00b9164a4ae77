package puzzleworkshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/**
 * Who reads and writes which table, by the SQL in the program's text: each table belongs to one room, the others ask its
 * face. What several rooms read together is a view made by a migration. The backup copies whatever there is by name.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class TablesTest {

    private static final Path SOURCES = Path.of("src", "main", "java", "puzzleworkshop");
    private static final Path MIGRATIONS = Path.of("db", "migration");

    private static final Pattern BLOCK = Pattern.compile("\"\"\"(.*?)\"\"\"", Pattern.DOTALL);
    private static final Pattern TEXT = Pattern.compile("\"((?:[^\"\\\\\\n]|\\\\.)*)\"");
    private static final Pattern NAMED =
            Pattern.compile("\\b(?:from|join|into|update|table)\\s+(?:only\\s+)?([a-z_]+)", Pattern.CASE_INSENSITIVE);

    @Test
    void every_table_is_read_and_written_by_one_room_only() throws IOException {
        Set<String> tables = made("create table ([a-z_]+)");
        assertThat(tables).hasSizeGreaterThan(60);
        Map<String, Set<String>> shared = new TreeMap<>();
        rooms().forEach((table, rooms) -> {
            if (tables.contains(table) && rooms.size() > 1) {
                shared.put(table, rooms);
            }
        });
        assertThat(shared).as("tables that more than one room reads or writes").isEmpty();
    }

    @Test
    void every_table_has_a_room() throws IOException {
        Set<String> nobodys = made("create table ([a-z_]+)");
        nobodys.removeAll(rooms().keySet());
        // Its rows are taken by a trigger of the table invoice.
        nobodys.remove("invoice_counter");
        assertThat(nobodys).as("tables that no room reads or writes").isEmpty();
    }

    @Test
    void the_number_of_an_order_is_read_from_one_view_below_orders() throws IOException {
        assertThat(made("create view ([a-z_]+)")).contains("order_ref");
        assertThat(rooms().get("customer_order")).containsExactly("orders");
    }

    private static Set<String> made(String pattern) throws IOException {
        Set<String> names = new TreeSet<>();
        for (Path file : files(MIGRATIONS, ".sql")) {
            Matcher made = Pattern.compile(pattern).matcher(Files.readString(file));
            while (made.find()) {
                names.add(made.group(1));
            }
            Matcher gone = Pattern.compile("drop (?:table|view) (?:if exists )?([a-z_]+)")
                    .matcher(Files.readString(file));
            while (gone.find()) {
                names.remove(gone.group(1));
            }
        }
        return names;
    }

    /** Rooms by the table or view that stands in their SQL. */
    private static Map<String, Set<String>> rooms() throws IOException {
        Map<String, Set<String>> rooms = new TreeMap<>();
        for (Path file : files(SOURCES, ".java")) {
            String room = SOURCES.relativize(file).getName(0).toString();
            if (room.equals("database")) {
                continue;
            }
            for (String text : texts(Files.readString(file))) {
                Matcher named = NAMED.matcher(text);
                while (named.find()) {
                    rooms.computeIfAbsent(named.group(1).toLowerCase(Locale.ROOT), table -> new TreeSet<>())
                            .add(room);
                }
            }
        }
        return rooms;
    }

    private static List<String> texts(String source) {
        List<String> texts = new ArrayList<>();
        Matcher blocks = BLOCK.matcher(source);
        while (blocks.find()) {
            texts.add(blocks.group(1));
        }
        Matcher others = TEXT.matcher(BLOCK.matcher(source).replaceAll(""));
        while (others.find()) {
            texts.add(others.group(1));
        }
        return texts;
    }

    private static List<Path> files(Path below, String ending) throws IOException {
        try (Stream<Path> all = Files.walk(below)) {
            return all.filter(file -> file.toString().endsWith(ending)).sorted().toList();
        }
    }
}
