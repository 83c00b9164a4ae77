package puzzleworkshop.database;

import com.zaxxer.hikari.HikariDataSource;
import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.List;
import java.util.Properties;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationVersion;
import org.postgresql.PGConnection;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.runtime.VersionedCache;

/**
 * Reads a {@link Backup} into a workshop that has not been opened yet. The tables are made as they were when the backup was
 * made, filled in one transaction with every constraint checked at its end, and then brought to today's form by the same
 * migrations as any other data. When anything fails, the workshop is as empty as before.
 */
final class Restore {

    private final Flyway flyway;
    private final DataSource dataSource;

    Restore(Flyway flyway) {
        this.flyway = flyway;
        this.dataSource = flyway.getConfiguration().getDataSource();
    }

    /**
     * @throws Refused when there is someone's work in the database already, or the file is no backup, is damaged or was
     *         made by a newer version of the program
     */
    void from(Path file) {
        refuseWhereSomeoneWorks();
        try (ZipFile zip = new ZipFile(file.toFile(), StandardCharsets.UTF_8)) {
            String schema = schemaOf(zip);
            try {
                clean();
                Flyway.configure()
                        .configuration(flyway.getConfiguration())
                        .target(MigrationVersion.fromVersion(schema))
                        .load()
                        .migrate();
                fill(zip);
                flyway.migrate();
            } catch (RuntimeException | SQLException | IOException e) {
                clean();
                flyway.migrate();
                throw e;
            }
        } catch (ZipException noZip) {
            throw new Refused("database.restore.no-backup");
        } catch (IOException | SQLException e) {
            throw new Refused("database.restore.damaged", String.valueOf(e.getMessage()));
        } finally {
            forgetOldTables();
        }
    }

    private void refuseWhereSomeoneWorks() {
        try (Connection connection = dataSource.getConnection()) {
            boolean made = !Backup.list(
                            connection,
                            "select 1 from pg_tables where schemaname = 'public'" + " and tablename = 'account'")
                    .isEmpty();
            if (made
                    && !Backup.list(connection, "select 1 from account limit 1").isEmpty()) {
                throw new Refused("database.restore.not-empty");
            }
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private String schemaOf(ZipFile zip) throws IOException {
        ZipEntry about = zip.getEntry("about.txt");
        if (about == null || zip.getEntry("sequences") == null) {
            throw new Refused("database.restore.no-backup");
        }
        Properties facts = new Properties();
        try (InputStream in = zip.getInputStream(about)) {
            facts.load(in);
        }
        String schema = facts.getProperty("schema", "");
        if (!Backup.FORMAT.equals(facts.getProperty("format")) || !schema.matches("[0-9.]{1,20}")) {
            throw new Refused("database.restore.no-backup");
        }
        MigrationVersion newest = MigrationVersion.EMPTY;
        for (var migration : flyway.info().all()) {
            if (migration.getVersion() != null && migration.getVersion().compareTo(newest) > 0) {
                newest = migration.getVersion();
            }
        }
        if (MigrationVersion.fromVersion(schema).compareTo(newest) > 0) {
            throw new Refused("database.restore.newer");
        }
        return schema;
    }

    private void clean() {
        Flyway.configure()
                .configuration(flyway.getConfiguration())
                .cleanDisabled(false)
                .load()
                .clean();
    }

    private void fill(ZipFile zip) throws SQLException, IOException {
        try (Connection connection = dataSource.getConnection()) {
            connection.setAutoCommit(false);
            try (Statement statement = connection.createStatement()) {
                List<String> tables = Backup.tables(connection);
                List<String> references = takeReferencesOff(connection, statement);
                for (String table : tables) {
                    statement.execute("alter table " + Backup.quoted(table) + " disable trigger user");
                    // What the migrations wrote; the backup has it as the workshop had changed it.
                    statement.execute("truncate " + Backup.quoted(table));
                }
                fillTables(connection, zip, tables);
                setSequences(connection, zip);
                for (String reference : references) {
                    statement.execute(reference);
                }
                for (String table : tables) {
                    statement.execute("alter table " + Backup.quoted(table) + " enable trigger user");
                }
                connection.commit();
            } catch (SQLException | IOException | RuntimeException e) {
                connection.rollback();
                throw e;
            } finally {
                connection.setAutoCommit(true);
            }
        }
    }

    /** Tables refer to each other in no order that always holds; references are put back, and checked, at the end. */
    private static List<String> takeReferencesOff(Connection connection, Statement statement) throws SQLException {
        String ofEach = """
                 from pg_constraint where contype = 'f' and connamespace = 'public'::regnamespace order by oid
                """;
        List<String> putBack = Backup.list(connection, """
                select format('alter table %s add constraint %I %s', conrelid::regclass, conname, pg_get_constraintdef(oid))
                """ + ofEach);
        for (String off : Backup.list(
                connection,
                "select format('alter table %s drop constraint %I', conrelid::regclass, conname)" + ofEach)) {
            statement.execute(off);
        }
        return putBack;
    }

    private static void fillTables(Connection connection, ZipFile zip, List<String> tables)
            throws SQLException, IOException {
        List<String> known = new ArrayList<>(tables);
        for (Enumeration<? extends ZipEntry> all = zip.entries(); all.hasMoreElements(); ) {
            ZipEntry entry = all.nextElement();
            if (!entry.getName().startsWith("tables/")) {
                continue;
            }
            String table = entry.getName().substring("tables/".length());
            if (!known.remove(table)) {
                throw new Refused("database.restore.damaged", entry.getName());
            }
            try (InputStream in = new BufferedInputStream(zip.getInputStream(entry), 1 << 16)) {
                String columns = firstLine(in);
                if (!columns.equals(String.join(",", Backup.columns(connection, table)))) {
                    throw new Refused("database.restore.damaged", entry.getName());
                }
                connection
                        .unwrap(PGConnection.class)
                        .getCopyAPI()
                        .copyIn("copy " + Backup.quoted(table) + " (" + columns + ") from stdin", in);
            }
        }
        if (!known.isEmpty()) {
            throw new Refused("database.restore.damaged", known.getFirst());
        }
    }

    private static void setSequences(Connection connection, ZipFile zip) throws SQLException, IOException {
        try (BufferedReader lines = new BufferedReader(
                        new InputStreamReader(zip.getInputStream(zip.getEntry("sequences")), StandardCharsets.UTF_8));
                PreparedStatement set = connection.prepareStatement("select setval(format('public.%I', ?::text), ?)")) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                String[] parts = line.split("\t");
                set.setString(1, parts[0]);
                set.setLong(2, Long.parseLong(parts[1]));
                set.execute();
            }
        }
    }

    private static String firstLine(InputStream in) throws IOException {
        StringBuilder line = new StringBuilder();
        for (int c = in.read(); c != '\n'; c = in.read()) {
            if (c < 0 || line.length() > 20_000) {
                throw new IOException("a table without columns");
            }
            line.append((char) c);
        }
        return line.toString();
    }

    /** Connections in the pool may hold plans for the tables that were dropped. */
    private void forgetOldTables() {
        VersionedCache.forgetEverything();
        if (dataSource instanceof HikariDataSource pool && pool.getHikariPoolMXBean() != null) {
            pool.getHikariPoolMXBean().softEvictConnections();
        }
    }
}
