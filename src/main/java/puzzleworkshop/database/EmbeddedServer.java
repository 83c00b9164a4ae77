package puzzleworkshop.database;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A real PostgreSQL server of our own, started with the program and stopped with it. Durability is on (the library's
 * defaults switch it off for speed in tests); it listens on the loopback address only, without a unix socket, and asks
 * every connection for a random password. Until the very first start has set that password (a fraction of a second,
 * on a database still empty) the server trusts local connections.
 *
 * <p>It is watched: when it ends though the program goes on (killed, out of memory, a full disk), it is started again at the
 * same port, with a growing pause between attempts. PostgreSQL itself brings back what was committed.
 */
public final class EmbeddedServer implements AutoCloseable {

    /** The major version of the binaries in pom.xml; a data folder of another one is refused in words. */
    static final String MAJOR = "18";

    /** The database and its owner. The program never connects as the superuser once these exist. */
    public static final String NAME = "workshop";

    private final DataFolder folder;
    private final FileChannel lock;
    private static final Logger LOG = LoggerFactory.getLogger(EmbeddedServer.class);
    private static final long LOOK_EVERY_MILLIS = 1000;
    private static final long LONGEST_PAUSE_MILLIS = 60_000;

    private final String secret;
    private final int port;
    private final Thread watch;
    private volatile EmbeddedPostgres postgres;
    private volatile Optional<ProcessHandle> process;
    private volatile boolean up = true;
    private volatile boolean closing;
    private volatile Optional<Instant> startedAgain = Optional.empty();

    private EmbeddedServer(DataFolder folder) {
        this.folder = folder;
        folder.make();
        this.lock = folder.lock();
        try {
            OrphanServer.end(folder);
            refuseOtherMajor();
            refuseRootWithoutNamespaces();
            this.secret = folder.secret();
            this.postgres = start();
            this.port = postgres.getPort();
            this.watch = Thread.ofPlatform().daemon().name("database-watch").unstarted(this::watch);
            this.process = OrphanServer.inFile(folder);
            // Where the system shows no processes, nothing can be watched.
            if (process.isPresent()) {
                watch.start();
            }
        } catch (RuntimeException | Error e) {
            release(lock);
            throw e;
        }
    }

    /**
     * @param folder to keep the data in, null or blank for the usual one
     * @throws CannotStart with words for the person at the keyboard
     */
    public static EmbeddedServer on(String folder) {
        return new EmbeddedServer(DataFolder.of(folder));
    }

    public String url() {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + NAME;
    }

    public String user() {
        return NAME;
    }

    public String password() {
        return secret;
    }

    public Path home() {
        return folder.home();
    }

    /** A connection of the superuser; for setting the server up and for tests. */
    public Connection superuser() throws SQLException {
        return postgres.getPostgresDatabase().getConnection();
    }

    /** False from when the server was found ended until it is there again. */
    public boolean isUp() {
        return up;
    }

    /** When it had to be started again, the last time since the program began. */
    public Optional<Instant> startedAgain() {
        return startedAgain;
    }

    private void watch() {
        while (!closing && pause(LOOK_EVERY_MILLIS)) {
            if (!process.filter(OrphanServer::isAtWork).isPresent() && !closing) {
                startAgain();
            }
        }
    }

    private void startAgain() {
        up = false;
        LOG.error("The database server has ended by itself; it is started again");
        long wait = LOOK_EVERY_MILLIS;
        while (!closing) {
            try {
                postgres.close();
                postgres = builder().setPort(port).start();
                process = OrphanServer.inFile(folder);
                startedAgain = Optional.of(Instant.now());
                up = true;
                LOG.warn("The database server is there again. See in its log why it ended; is the disk full?");
                return;
            } catch (IOException | RuntimeException | Error notYet) {
                // an Error too: whoever watches must not end with it, or nobody starts the server again
                LOG.error("The database server does not start; tried again in {} s", wait / 1000, notYet);
            }
            if (!pause(wait)) {
                return;
            }
            wait = Math.min(LONGEST_PAUSE_MILLIS, wait * 2);
        }
    }

    private static boolean pause(long millis) {
        try {
            Thread.sleep(millis);
            return true;
        } catch (InterruptedException stopped) {
            return false;
        }
    }

    private void endWatch() {
        closing = true;
        if (watch.getState() == Thread.State.NEW) {
            return;
        }
        watch.interrupt();
        try {
            watch.join(Duration.ofSeconds(90));
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    /** Ends the server and waits for it; the library alone gives up after five seconds, which a busy disk can exceed. */
    @Override
    public void close() {
        endWatch();
        Optional<ProcessHandle> server = OrphanServer.running(folder);
        try {
            postgres.close();
            server.ifPresent(process -> OrphanServer.awaitEnd(process, folder));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            release(lock);
        }
    }

    private EmbeddedPostgres start() {
        boolean first = !Files.exists(folder.cluster().resolve("postgresql.conf"));
        // A mark left by a first start that did not reach its end: that cluster still trusts everyone and holds
        // nothing.
        Path unfinished = folder.home().resolve("first-start.unfinished");
        try {
            first |= Files.exists(unfinished);
            if (first && !Files.exists(unfinished)) {
                Files.createFile(unfinished);
            }
            EmbeddedPostgres started = builder().start();
            try {
                if (first) {
                    close(started);
                    Files.delete(unfinished);
                }
                return started;
            } catch (SQLException | IOException | RuntimeException e) {
                started.close();
                throw e;
            }
        } catch (IOException | SQLException | RuntimeException e) {
            throw new CannotStart(
                    "The database in " + folder.cluster() + " did not start: " + e.getMessage(),
                    "See that the disk has room and that the folder belongs to the user who runs the program. A server"
                            + " of your own can be used with --spring.datasource.url=jdbc:postgresql://HOST/DATABASE.",
                    e);
        }
    }

    private EmbeddedPostgres.Builder builder() throws IOException {
        return EmbeddedPostgres.builder()
                .setDataDirectory(folder.cluster())
                .setCleanDataDirectory(false)
                .setOverrideWorkingDirectory(folder.binaries().toFile())
                .setLocaleConfig("locale", "C.UTF-8")
                .setServerConfig("fsync", "on")
                .setServerConfig("full_page_writes", "on")
                .setServerConfig("synchronous_commit", "on")
                .setServerConfig("listen_addresses", "127.0.0.1")
                .setServerConfig("unix_socket_directories", "''")
                .setServerConfig("max_connections", "40")
                .setServerConfig("password_encryption", "scram-sha-256")
                .setServerConfig("timezone", "UTC")
                .setConnectConfig("password", secret)
                .setPGStartupWait(Duration.ofSeconds(60))
                .setRegisterShutdownHook(false);
    }

    /** Sets the password, makes the workshop's own user and database, and closes the door to everyone without it. */
    private void close(EmbeddedPostgres started) throws SQLException, IOException {
        try (Connection connection = started.getPostgresDatabase().getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("alter user postgres password '" + secret + "'");
            if (!exists(statement, "select 1 from pg_roles where rolname = '" + NAME + "'")) {
                statement.execute("create role " + NAME + " login password '" + secret + "'");
            }
            if (!exists(statement, "select 1 from pg_database where datname = '" + NAME + "'")) {
                statement.execute("create database " + NAME + " owner " + NAME);
            }
            Files.writeString(folder.cluster().resolve("pg_hba.conf"), """
                # Written by Puzzle Workshop: a password for everyone, this computer only.
                host all all 127.0.0.1/32 scram-sha-256
                host all all ::1/128      scram-sha-256
                """);
            statement.execute("select pg_reload_conf()");
        }
    }

    private static boolean exists(Statement statement, String query) throws SQLException {
        try (ResultSet rows = statement.executeQuery(query)) {
            return rows.next();
        }
    }

    private void refuseOtherMajor() {
        Path version = folder.cluster().resolve("PG_VERSION");
        if (!Files.exists(version)) {
            return;
        }
        try {
            String found = Files.readString(version).strip();
            if (!found.equals(MAJOR)) {
                throw new CannotStart(
                        "The data in " + folder.cluster() + " was written by PostgreSQL " + found
                                + "; this program brings PostgreSQL " + MAJOR + ", which cannot read it.",
                        "Start the version of Puzzle Workshop you used before, make a backup there (Set-up, Backup),"
                                + " start this version on an empty folder and restore the backup into it.",
                        null);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** PostgreSQL refuses to run as root; the library steps into a user namespace for it, where the system lets it. */
    private static void refuseRootWithoutNamespaces() {
        if (!"root".equals(System.getProperty("user.name"))
                || !System.getProperty("os.name").startsWith("Linux")) {
            return;
        }
        try {
            Process probe = new ProcessBuilder("unshare", "-U", "true")
                    .redirectErrorStream(true)
                    .start();
            probe.getInputStream().readAllBytes();
            if (probe.waitFor() == 0) {
                return;
            }
        } catch (IOException noSuchProgram) {
            // falls through to the refusal
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        throw new CannotStart(
                "The program runs as root, and PostgreSQL does not run as root on this system.",
                "Run the program as an ordinary user, or use a PostgreSQL server of your own with"
                        + " --spring.datasource.url=jdbc:postgresql://HOST/DATABASE.",
                null);
    }

    private static void release(FileChannel lock) {
        try {
            lock.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
