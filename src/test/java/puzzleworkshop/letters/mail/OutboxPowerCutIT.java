package puzzleworkshop.letters.mail;

import static java.util.concurrent.TimeUnit.SECONDS;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BooleanSupplier;
import javax.sql.DataSource;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.letters.mail.ScriptedServer.Step;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.PlainOrders;
import puzzleworkshop.support.TestServer;

/**
 * The outbox in a process of its own, killed without warning (SIGKILL) between each pair of its steps: no letter is lost and
 * none is sent twice. The mail server belongs to the test, so it can tell what really arrived.
 */
@DatabaseTest
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "kills as Unix does")
@DisplayNameGeneration(ReplaceUnderscores.class)
class OutboxPowerCutIT {

    private static final Duration PATIENCE = Duration.ofMinutes(2);

    @Autowired
    DataSource database;

    @Autowired
    JdbcClient jdbc;

    @TempDir
    Path folder;

    private Process process;
    private long letter;

    private void a_letter_in_the_outbox() {
        CleanDatabase.now(database);
        long order = PlainOrders.add(jdbc, 1).getFirst().id().value();
        letter = jdbc.sql("""
            insert into letter (order_id, kind, way, recipient, subject, body, attached, made_at, made_on, made_by)
            values (:order, 'ON_TIME', 'MAIL', 'ida@norrby.example', 's', 'b', '', now(), current_date, 'mara')
            returning id
            """).param("order", order).query(Long.class).single();
        MailAccount from = new MailAccount(
                true, "localhost", 25, MailAccount.Security.NONE, "", "", "post@puzzles.example", false);
        byte[] bytes = MimeWriter.write(
                new Message("ida@norrby.example", "s", "b".repeat(20_000), "<p>b</p>", List.of(), List.of()),
                from,
                "<9@puzzles.example>",
                ZonedDateTime.now(Clock.systemDefaultZone()));
        new OutboxStore(jdbc).put(letter, "<9@puzzles.example>", bytes, Instant.now());
    }

    /** Killed while the mail server was about to answer: everything before the last line is sent again, once. */
    @ParameterizedTest
    @EnumSource(Step.class)
    void killed_in_the_middle_of_the_conversation(Step step) throws Exception {
        a_letter_in_the_outbox();
        try (ScriptedServer server = new ScriptedServer()) {
            AtomicBoolean killed = new AtomicBoolean();
            server.before(reached -> {
                if (reached == step && killed.compareAndSet(false, true)) {
                    kill();
                    throw new IllegalStateException("nobody is there any more");
                }
            });
            start(server);
            ended();
            assertThat(killed).isTrue();
            thenAnotherStarts(server, step == Step.AFTER_THE_DOT);
        }
    }

    @Test
    void killed_before_it_has_claimed_the_letter() throws Exception {
        a_letter_in_the_outbox();
        try (ScriptedServer server = new ScriptedServer()) {
            atALock("lock table letter_outbox in access exclusive mode", () -> start(server));
            thenAnotherStarts(server, false);
        }
    }

    /** Claimed, connected, half of the message gone: the mark before the last line was not made. */
    @Test
    void killed_before_it_has_marked_that_the_last_line_goes_out() throws Exception {
        a_letter_in_the_outbox();
        try (ScriptedServer server = new ScriptedServer()) {
            killedWhileTheRowIsLockedAt(Step.IN_THE_MESSAGE, server);
            assertThat(server.taken()).isEmpty();
            thenAnotherStarts(server, false);
        }
    }

    /** Marked and not gone out: the row cannot tell it from one that has gone, so a person is asked and nothing is lost. */
    @Test
    void killed_after_it_has_marked_that_the_last_line_goes_out_and_before_it_does() throws Exception {
        a_letter_in_the_outbox();
        try (ScriptedServer server = new ScriptedServer()) {
            start(server, OutboxProcess.STOP_AT_THE_MARK);
            until(() -> said().contains(OutboxProcess.MARKED));
            kill();
            OutboxStore store = new OutboxStore(jdbc);
            Outbox outbox = OutboxProcess.outbox(store, server.port());
            outbox.recover();
            assertThat(outbox.sendNext()).as("nothing is due").isFalse();
            assertThat(state()).isEqualTo("ASKS");
            assertThat(server.taken()).isEmpty();
            assertThat(store.settle(letter, MailState.ASKS, MailState.WAITING, Instant.now()))
                    .as("a person found that it has not come")
                    .isTrue();
            thenAnotherStarts(server, false);
        }
    }

    /** The server has taken it and has said so; the mark was not made. Only a person can know. */
    @Test
    void killed_after_the_answer_and_before_the_mark() throws Exception {
        a_letter_in_the_outbox();
        try (ScriptedServer server = new ScriptedServer()) {
            killedWhileTheRowIsLockedAt(Step.AFTER_THE_DOT, server);
            assertThat(server.taken()).hasSize(1);
            thenAnotherStarts(server, true);
        }
    }

    @Test
    void killed_after_the_mark() throws Exception {
        a_letter_in_the_outbox();
        try (ScriptedServer server = new ScriptedServer()) {
            start(server);
            until(() -> state().equals("SENT"));
            kill();
            thenAnotherStarts(server, false);
        }
    }

    /** Whatever a person answers is done once, and an old answer does nothing more. */
    @Test
    void a_person_decides_about_a_letter_that_may_have_been_sent() throws Exception {
        a_letter_in_the_outbox();
        try (ScriptedServer server = new ScriptedServer()) {
            killedWhileTheRowIsLockedAt(Step.AFTER_THE_DOT, server);
            thenAnotherStarts(server, true);
            OutboxStore store = new OutboxStore(jdbc);
            assertThat(store.settle(letter, MailState.ASKS, MailState.WAITING, Instant.now()))
                    .isTrue();
            assertThat(store.settle(letter, MailState.ASKS, MailState.SENT, Instant.now()))
                    .isFalse();
            Outbox outbox = OutboxProcess.outbox(store, server.port());
            assertThat(outbox.sendNext()).isTrue();
            assertThat(server.taken())
                    .as("the same identity, so that a mail program knows it again")
                    .containsExactly("<9@puzzles.example>", "<9@puzzles.example>");
            assertThat(state()).isEqualTo("SENT");
        }
    }

    @Test
    void two_programs_at_once_send_each_letter_once() throws Exception {
        a_letter_in_the_outbox();
        try (ScriptedServer server = new ScriptedServer()) {
            AtomicBoolean first = new AtomicBoolean();
            Outbox other = OutboxProcess.outbox(new OutboxStore(jdbc), server.port());
            server.before(reached -> {
                if (reached == Step.IN_THE_MESSAGE && first.compareAndSet(false, true)) {
                    // another program starts and takes the claim for one that is dead
                    other.recover();
                }
            });
            Outbox one = OutboxProcess.outbox(new OutboxStore(jdbc), server.port());
            assertThat(one.sendNext()).isTrue();
            while (other.sendNext()) {
                // until nothing is due
            }
            assertThat(server.taken().size()).isLessThanOrEqualTo(1);
            assertThat(state()).isIn("SENT", "ASKS", "WAITING");
        }
    }

    /** Another program starts: what was not sent is sent, what may have been sent asks, and nothing is sent twice. */
    private void thenAnotherStarts(ScriptedServer server, boolean asks) {
        server.before(step -> {});
        for (int again = 0; again < 2; again++) {
            Outbox outbox = OutboxProcess.outbox(new OutboxStore(jdbc), server.port());
            outbox.recover();
            while (outbox.sendNext()) {
                // until nothing is due
            }
        }
        assertThat(server.taken()).containsExactly("<9@puzzles.example>");
        assertThat(state()).isEqualTo(asks ? "ASKS" : "SENT");
    }

    /** Holds the row when the conversation has come to the step, and kills the process where it waits to write the row. */
    private void killedWhileTheRowIsLockedAt(Step step, ScriptedServer server) throws Exception {
        try (Connection holder = database.getConnection()) {
            holder.setAutoCommit(false);
            AtomicBoolean held = new AtomicBoolean();
            server.before(reached -> {
                if (reached == step && held.compareAndSet(false, true)) {
                    execute(holder, "select 1 from letter_outbox for update");
                }
            });
            start(server);
            until(() -> waiting() == 1);
            kill();
            endTheirConnections();
            holder.rollback();
        }
    }

    private void atALock(String lock, Started started) throws Exception {
        try (Connection holder = database.getConnection()) {
            holder.setAutoCommit(false);
            execute(holder, lock);
            started.run();
            until(() -> waiting() == 1);
            kill();
            endTheirConnections();
            holder.rollback();
        }
    }

    private interface Started {
        void run() throws IOException;
    }

    private static void execute(Connection connection, String sql) {
        try (var statement = connection.createStatement()) {
            statement.execute(sql);
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private int waiting() {
        return jdbc.sql("""
            select count(*) from pg_stat_activity where application_name = :name and wait_event_type = 'Lock'
            """)
                .param("name", OutboxProcess.NAME)
                .query(Integer.class)
                .single();
    }

    /** A server process whose client is gone would still do what it waits for. */
    private void endTheirConnections() {
        jdbc.sql("select pg_terminate_backend(pid) from pg_stat_activity where application_name = :name")
                .param("name", OutboxProcess.NAME)
                .query((row, n) -> row.getBoolean(1))
                .list();
        until(() -> jdbc.sql("select count(*) from pg_stat_activity where application_name = :name")
                        .param("name", OutboxProcess.NAME)
                        .query(Integer.class)
                        .single()
                == 0);
    }

    private String state() {
        return jdbc.sql("select state from letter_outbox where letter_id = :letter")
                .params(Map.of("letter", letter))
                .query(String.class)
                .single();
    }

    private void start(ScriptedServer server, String... more) throws IOException {
        TestServer home = TestServer.shared();
        Path said = folder.resolve("said.txt");
        Files.deleteIfExists(said);
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx128m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                OutboxProcess.class.getName(),
                home.url(),
                home.user(),
                home.password(),
                String.valueOf(server.port())));
        command.addAll(List.of(more));
        process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
    }

    private void kill() {
        try {
            process.destroyForcibly().waitFor(30, SECONDS);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private void ended() throws Exception {
        assertThat(process.waitFor(PATIENCE.toSeconds(), SECONDS))
                .as(Files.readString(folder.resolve("said.txt")))
                .isTrue();
        assertThat(process.exitValue()).as("killed").isNotZero();
    }

    private void until(BooleanSupplier come) {
        Instant end = Instant.now().plus(PATIENCE);
        while (!come.getAsBoolean()) {
            try {
                assertThat(Instant.now())
                        .as(() -> "waited; the process said: " + said())
                        .isBefore(end);
                Thread.sleep(20);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    private String said() {
        try {
            return Files.readString(folder.resolve("said.txt"));
        } catch (IOException e) {
            return e.toString();
        }
    }
}
