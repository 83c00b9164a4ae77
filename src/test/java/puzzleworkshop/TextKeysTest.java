package puzzleworkshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;

/** Sentences and the program agree: every key that is used has a sentence, and every sentence is used. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class TextKeysTest {

    /** Written into histories by earlier programs; nobody writes them any more, but they are still read. */
    private static final Set<String> ONLY_IN_HISTORIES = Set.of(
            "orders.history.sheet",
            "orders.history.board-arrived",
            "papers.history.received",
            "papers.history.refunded",
            "planning.history.payment-first",
            "planning.history.payment-let-go");

    /** Look like keys and are none: names of files and fields. */
    private static final Set<String> NO_KEYS =
            Set.of("database.secret", "access.name", "access.password", "workshop.name", "sheets.csv");

    /** A string in the code, and whether something is added to it. */
    private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\\n]|\\\\.)*)\"(\\s*\\+)?");

    private static final Pattern LIKE_A_KEY = Pattern.compile("[a-z]+\\.[\\w.-]*");
    private static final Pattern LIKE_AN_ENDING = Pattern.compile("\\.[\\w.-]+");

    private final Set<String> keys = new TreeSet<>();
    private final Set<String> whole = new TreeSet<>();
    private final Set<String> beginnings = new TreeSet<>();
    private final Set<String> endings = new TreeSet<>();

    TextKeysTest() throws IOException {
        for (Path file : files(Path.of("src/main/resources/texts"), ".properties")) {
            Properties texts = new Properties();
            texts.load(Files.newBufferedReader(file));
            keys.addAll(texts.stringPropertyNames());
        }
        Set<String> rooms = keys.stream().map(TextKeysTest::room).collect(Collectors.toSet());
        for (Path file : files(Path.of("src/main/java"), ".java")) {
            Matcher literal = LITERAL.matcher(withoutComments(Files.readAllLines(file)));
            while (literal.find()) {
                String text = literal.group(1);
                if (LIKE_AN_ENDING.matcher(text).matches()) {
                    endings.add(text);
                } else if (LIKE_A_KEY.matcher(text).matches() && rooms.contains(room(text))) {
                    (literal.group(2) == null ? whole : beginnings).add(text);
                }
            }
        }
        whole.removeAll(NO_KEYS);
    }

    private static String withoutComments(List<String> lines) {
        return lines.stream()
                .filter(line -> !line.strip().matches("(\\*|/\\*|//).*"))
                .collect(Collectors.joining("\n"));
    }

    private static String room(String key) {
        return key.substring(0, key.indexOf('.'));
    }

    @Test
    void every_key_that_is_used_has_a_sentence() {
        assertThat(whole.size()).as("keys found in the code").isGreaterThan(1000);
        assertThat(whole.stream()
                        .filter(key ->
                                !keys.contains(key) && endings.stream().noneMatch(end -> keys.contains(key + end)))
                        .toList())
                .as("keys without a sentence")
                .isEmpty();
        assertThat(beginnings.stream()
                        .filter(start -> keys.stream().noneMatch(key -> key.startsWith(start)))
                        .toList())
                .as("beginnings of keys no sentence has")
                .isEmpty();
    }

    @Test
    void every_sentence_is_used() {
        assertThat(keys.stream().filter(key -> !isUsed(key)).toList())
                .as("sentences nobody says")
                .isEmpty();
    }

    private boolean isUsed(String key) {
        return whole.contains(key)
                || ONLY_IN_HISTORIES.contains(key)
                || beginnings.stream().anyMatch(key::startsWith)
                || endings.stream()
                        .anyMatch(end ->
                                key.endsWith(end) && whole.contains(key.substring(0, key.length() - end.length())));
    }

    /** What earlier programs wrote into histories is still said: their backups lie among the tests. */
    @Test
    void every_line_of_an_old_history_has_its_sentence() throws IOException, URISyntaxException {
        int lines = 0;
        Path backups = Path.of(
                Objects.requireNonNull(getClass().getResource("/backups")).toURI());
        for (Path backup : files(backups, ".zip")) {
            try (ZipFile zip = new ZipFile(backup.toFile())) {
                ZipEntry table = zip.getEntry("tables/order_history");
                List<String> rows = new String(zip.getInputStream(table).readAllBytes(), StandardCharsets.UTF_8)
                        .lines()
                        .toList();
                int column = List.of(rows.getFirst().split("\\s*,\\s*")).indexOf("text_key");
                for (String row : rows.subList(1, rows.size())) {
                    assertThat(keys).as(backup.getFileName().toString()).contains(row.split("\t", -1)[column]);
                    lines++;
                }
            }
        }
        assertThat(lines).isGreaterThan(50);
    }

    private static List<Path> files(Path folder, String ending) {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> file.toString().endsWith(ending)).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
