package puzzleworkshop.database;

import static java.util.concurrent.TimeUnit.SECONDS;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import puzzleworkshop.PuzzleWorkshop;

/** The whole program as its own process: killed without warning, started again, and asked to stop. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "uses Unix signals")
@Tag("database")
@DisplayNameGeneration(ReplaceUnderscores.class)
class PowerCutIT {

    private static final Duration PATIENCE = Duration.ofMinutes(2);

    @TempDir
    Path folder;

    private Process program;

    @AfterEach
    void end_what_was_started() throws InterruptedException {
        if (program != null && program.isAlive()) {
            program.destroy();
            program.waitFor(30, SECONDS);
        }
    }

    @Test
    void after_kill_9_it_starts_again_with_everything_committed_and_after_SIGTERM_no_server_is_left() throws Exception {
        start();
        try (Connection connection = connect()) {
            connection.createStatement().execute("create table kept (word text)");
            connection.createStatement().execute("insert into kept values ('spruce')");
        }
        long orphan = serverPid();
        program.destroyForcibly().waitFor(30, SECONDS);
        Assumptions.assumeTrue(isAlive(orphan), "the server outlives its program on this system");

        start();
        assertThat(isAlive(orphan)).as("the left-over server").isFalse();
        try (Connection connection = connect();
                ResultSet rows = connection.createStatement().executeQuery("select word from kept")) {
            rows.next();
            assertThat(rows.getString(1)).isEqualTo("spruce");
        }

        long second = serverPid();
        program.destroy();
        assertThat(program.waitFor(60, SECONDS)).as("ends after SIGTERM").isTrue();
        assertThat(isAlive(second)).as("the server after SIGTERM").isFalse();
        assertThat(folder.resolve("data/database/postmaster.pid")).doesNotExist();
    }

    private void start() throws IOException, InterruptedException {
        Path said = folder.resolve("said.txt");
        Files.deleteIfExists(said);
        program = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx512m",
                        "-XX:+UseSerialGC",
                        "-XX:TieredStopAtLevel=1",
                        "-Djava.awt.headless=true",
                        "-cp",
                        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                        PuzzleWorkshop.class.getName(),
                        "--server.port=0",
                        "--puzzleworkshop.data=" + folder.resolve("data")))
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
        Instant end = Instant.now().plus(PATIENCE);
        while (!Files.readString(said).contains("Puzzle Workshop is open at")) {
            assertThat(program.isAlive() && Instant.now().isBefore(end))
                    .as("the program starts; it said: %s", Files.readString(said))
                    .isTrue();
            Thread.sleep(100);
        }
    }

    private Connection connect() throws IOException, SQLException {
        String port = Files.readAllLines(folder.resolve("data/database/postmaster.pid"))
                .get(3)
                .strip();
        String secret = Files.readString(folder.resolve("data/database.secret")).strip();
        return DriverManager.getConnection(
                "jdbc:postgresql://127.0.0.1:" + port + "/" + EmbeddedServer.NAME, EmbeddedServer.NAME, secret);
    }

    private long serverPid() throws IOException {
        return Long.parseLong(Files.readAllLines(folder.resolve("data/database/postmaster.pid"))
                .getFirst()
                .strip());
    }

    private static boolean isAlive(long pid) {
        return ProcessHandle.of(pid).map(ProcessHandle::isAlive).orElse(false);
    }
}
