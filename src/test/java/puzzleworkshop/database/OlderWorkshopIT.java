package puzzleworkshop.database;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.postgresql.PGConnection;

/**
 * Migrations with data in place: demo workshops as earlier programs left them (their pictures made tiny) are taken to today's
 * tables. The backups lie in {@code src/test/resources/backups}, named after the last migration they know; add one when a
 * release is made.
 */
@Tag("database")
@DisplayNameGeneration(ReplaceUnderscores.class)
class OlderWorkshopIT {

    @TempDir
    static Path folder;

    static EmbeddedServer server;

    @BeforeAll
    static void start() {
        server = EmbeddedServer.on(folder.resolve("older").toString());
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    static Stream<Path> backups() throws Exception {
        return Files.list(Path.of(OlderWorkshopIT.class.getResource("/backups").toURI()))
                .sorted();
    }

    @ParameterizedTest
    @MethodSource("backups")
    void what_an_earlier_program_wrote_is_there_word_for_word_after_all_migrations(Path backup) throws Exception {
        Flyway flyway = Flyway.configure()
                .dataSource(server.url(), server.user(), server.password())
                .locations("classpath:db/migration")
                .cleanDisabled(false)
                .load();
        flyway.clean();
        new Restore(flyway).from(backup);
        assertThat(flyway.info().pending()).isEmpty();
        int compared = 0;
        try (Connection now = DriverManager.getConnection(server.url(), server.user(), server.password());
                ZipFile zip = new ZipFile(backup.toFile())) {
            assertThat(Backup.list(now, "select conname from pg_constraint where not convalidated"))
                    .isEmpty();
            for (ZipEntry entry : Collections.list(zip.entries())) {
                if (!entry.getName().startsWith("tables/")) {
                    continue;
                }
                List<String> lines = new String(zip.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8)
                        .lines()
                        .toList();
                String table = entry.getName().substring("tables/".length());
                assertThat(rows(now, table, lines.getFirst()))
                        .as(table)
                        .isEqualTo(sorted(lines.subList(1, lines.size())));
                compared += lines.size() - 1;
            }
        }
        assertThat(compared).as("rows compared").isGreaterThan(300);
    }

    private static List<String> rows(Connection now, String table, String columns) throws SQLException, IOException {
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        now.unwrap(PGConnection.class)
                .getCopyAPI()
                .copyOut("copy " + Backup.quoted(table) + " (" + columns + ") to stdout", text);
        return sorted(text.toString(StandardCharsets.UTF_8).lines().toList());
    }

    private static List<String> sorted(List<String> lines) {
        return lines.stream().sorted().collect(Collectors.toCollection(ArrayList::new));
    }
}
