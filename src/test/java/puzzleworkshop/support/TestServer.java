package puzzleworkshop.support;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;
import puzzleworkshop.database.EmbeddedServer;

/**
 * The one PostgreSQL of a test run: in a container where Docker answers, else the embedded server that the program itself
 * uses. Its database is made afresh at the start of the run.
 */
public final class TestServer {

    private static TestServer shared;

    private final String url;
    private final String user;
    private final String password;

    private TestServer(String url, String user, String password) {
        this.url = url;
        this.user = user;
        this.password = password;
    }

    public static synchronized TestServer shared() {
        if (shared == null) {
            try {
                shared = DockerClientFactory.instance().isDockerAvailable() ? container() : embedded();
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
        }
        return shared;
    }

    public String url() {
        return url;
    }

    public String user() {
        return user;
    }

    public String password() {
        return password;
    }

    public Connection connect() throws SQLException {
        return DriverManager.getConnection(url, user, password);
    }

    private static TestServer container() throws SQLException {
        // Lives as long as the run; Testcontainers takes it away afterwards.
        PostgreSQLContainer container = new PostgreSQLContainer("postgres:18-alpine");
        container.start();
        return new TestServer(container.getJdbcUrl(), container.getUsername(), container.getPassword());
    }

    private static TestServer embedded() throws SQLException {
        EmbeddedServer server = start();
        Runtime.getRuntime().addShutdownHook(new Thread(server::close, "test-server-closer"));
        try (Connection connection = server.superuser();
                Statement statement = connection.createStatement()) {
            statement.execute("drop database if exists " + EmbeddedServer.NAME + " with (force)");
            statement.execute("create database " + EmbeddedServer.NAME + " owner " + EmbeddedServer.NAME);
            // Tests need not survive a power cut; what the program itself sets is tested in the database room.
            statement.execute("alter role " + EmbeddedServer.NAME + " set synchronous_commit = off");
            statement.execute("grant set on parameter session_replication_role to " + EmbeddedServer.NAME);
        }
        return new TestServer(server.url(), server.user(), server.password());
    }

    /** Keeps its folder between runs, which saves making a cluster; a second run beside this one gets its own. */
    private static EmbeddedServer start() {
        try {
            return EmbeddedServer.on(Path.of("target", "test-database").toString());
        } catch (RuntimeException taken) {
            return EmbeddedServer.on(
                    Path.of("target", "test-database-" + ProcessHandle.current().pid())
                            .toString());
        }
    }
}
