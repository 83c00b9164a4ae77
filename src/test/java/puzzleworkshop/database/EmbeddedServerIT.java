package puzzleworkshop.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@Tag("database")
@DisplayNameGeneration(ReplaceUnderscores.class)
class EmbeddedServerIT {

    @TempDir
    static Path folder;

    static EmbeddedServer server;

    @BeforeAll
    static void start() {
        server = EmbeddedServer.on(folder.toString());
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    @Test
    void what_is_committed_survives_a_power_cut_since_the_three_durability_settings_are_on() throws SQLException {
        for (String setting : List.of("fsync", "full_page_writes", "synchronous_commit")) {
            assertThat(show(setting)).as(setting).isEqualTo("on");
        }
    }

    /** It stayed away until somebody restarted the program. */
    @Test
    void a_server_that_is_killed_is_started_again_at_the_same_place_with_what_was_committed() throws Exception {
        String url = server.url();
        try (Connection connection = open()) {
            connection.createStatement().execute("create table if not exists kept (n int)");
            connection.createStatement().execute("insert into kept values (7)");
        }
        OrphanServer.inFile(DataFolder.of(folder.toString())).orElseThrow().destroyForcibly();
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(120);
        while (server.startedAgain().isEmpty() && System.nanoTime() < end) {
            Thread.sleep(200);
        }
        assertThat(server.startedAgain()).isPresent();
        assertThat(server.isUp()).isTrue();
        assertThat(server.url()).isEqualTo(url);
        try (Connection connection = open();
                ResultSet rows = connection.createStatement().executeQuery("select n from kept")) {
            assertThat(rows.next()).isTrue();
            assertThat(rows.getInt(1)).isEqualTo(7);
        }
    }

    @Test
    void passwords_are_kept_and_asked_for_by_scram() throws SQLException {
        assertThat(show("password_encryption")).isEqualTo("scram-sha-256");
        try (Connection connection = server.superuser();
                ResultSet rows = connection
                        .createStatement()
                        .executeQuery(
                                "select rolname from pg_authid where rolcanlogin and rolpassword not like 'SCRAM-SHA-256$%'")) {
            assertThat(rows.next())
                    .as("a user whose password is not kept by scram")
                    .isFalse();
        }
        try (Connection connection = server.superuser();
                ResultSet rows = connection
                        .createStatement()
                        .executeQuery("select distinct auth_method from pg_hba_file_rules")) {
            rows.next();
            assertThat(rows.getString(1)).isEqualTo("scram-sha-256");
            assertThat(rows.next()).as("another way in").isFalse();
        }
    }

    @Test
    void nobody_is_let_in_without_the_password() {
        assertThatThrownBy(() -> DriverManager.getConnection(server.url(), "postgres", "guess"))
                .isInstanceOf(SQLException.class)
                .hasMessageContaining("password authentication failed");
        assertThatThrownBy(() -> DriverManager.getConnection(server.url(), server.user(), ""))
                .isInstanceOf(SQLException.class);
    }

    @Test
    void the_program_itself_is_no_superuser() throws SQLException {
        try (Connection connection = open();
                ResultSet rows = connection
                        .createStatement()
                        .executeQuery(
                                "select rolsuper or rolcreaterole or rolcreatedb from pg_roles where rolname = current_user")) {
            rows.next();
            assertThat(rows.getBoolean(1)).isFalse();
        }
    }

    @Test
    void it_listens_on_the_loopback_address_only_and_has_no_unix_socket() throws Exception {
        assertThat(show("listen_addresses")).isEqualTo("127.0.0.1");
        try (Connection connection = server.superuser();
                ResultSet rows = connection.createStatement().executeQuery("show unix_socket_directories")) {
            rows.next();
            assertThat(rows.getString(1)).isEmpty();
        }
        int port = URI.create(server.url().substring("jdbc:".length())).getPort();
        for (InetAddress address : otherAddresses()) {
            try (Socket socket = new Socket()) {
                assertThatThrownBy(() -> socket.connect(new InetSocketAddress(address, port), 2000))
                        .as("connecting to %s", address)
                        .isInstanceOf(IOException.class);
            }
        }
    }

    @Test
    void it_takes_no_more_connections_than_a_small_workshop_needs() throws SQLException {
        assertThat(show("max_connections")).isEqualTo("40");
    }

    @Test
    void its_major_version_is_the_one_the_program_expects() throws SQLException {
        assertThat(show("server_version_num")).startsWith(EmbeddedServer.MAJOR);
        assertThat(folder.resolve("database/PG_VERSION")).content().isEqualToIgnoringWhitespace(EmbeddedServer.MAJOR);
    }

    @Test
    void only_the_owner_may_read_the_folder_and_the_password() throws IOException {
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder)))
                .isEqualTo("rwx------");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve("database.secret"))))
                .isEqualTo("rw-------");
    }

    @Test
    void a_second_copy_on_the_same_folder_is_refused_in_words() {
        assertThatThrownBy(() -> EmbeddedServer.on(folder.toString()))
                .isInstanceOf(CannotStart.class)
                .hasMessageContaining("Another copy of Puzzle Workshop is running")
                .hasMessageContaining(folder.toString());
    }

    @Test
    void data_of_another_major_version_is_refused_in_words(@TempDir Path other) throws IOException {
        Files.createDirectories(other.resolve("database"));
        Files.writeString(other.resolve("database/PG_VERSION"), "17\n");
        assertThatThrownBy(() -> EmbeddedServer.on(other.toString()))
                .isInstanceOfSatisfying(CannotStart.class, refusal -> {
                    assertThat(refusal).hasMessageContaining("PostgreSQL 17").hasMessageContaining("PostgreSQL 18");
                    assertThat(refusal.remedy()).contains("backup");
                });
    }

    @Test
    void a_first_start_that_was_cut_off_is_finished_by_the_next_one(@TempDir Path other) throws Exception {
        EmbeddedServer.on(other.toString()).close();
        // As if the power had gone between making the cluster and closing its door.
        Files.writeString(other.resolve("first-start.unfinished"), "");
        Files.writeString(other.resolve("database/pg_hba.conf"), "host all all 127.0.0.1/32 trust\n");
        try (EmbeddedServer again = EmbeddedServer.on(other.toString())) {
            assertThat(other.resolve("first-start.unfinished")).doesNotExist();
            assertThat(other.resolve("database/pg_hba.conf")).content().doesNotContain("trust");
            DriverManager.getConnection(again.url(), again.user(), again.password())
                    .close();
        }
    }

    private static List<Inet4Address> otherAddresses() throws IOException {
        return NetworkInterface.networkInterfaces()
                .flatMap(NetworkInterface::inetAddresses)
                .filter(Inet4Address.class::isInstance)
                .map(Inet4Address.class::cast)
                .filter(address -> !address.isLoopbackAddress())
                .toList();
    }

    private static String show(String setting) throws SQLException {
        try (Connection connection = open();
                ResultSet rows = connection.createStatement().executeQuery("show " + setting)) {
            rows.next();
            return rows.getString(1);
        }
    }

    private static Connection open() throws SQLException {
        return DriverManager.getConnection(server.url(), server.user(), server.password());
    }
}
