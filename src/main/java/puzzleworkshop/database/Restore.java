package puzzleworkshop.database;

import com.zaxxer.hikari.HikariDataSource;
import java.io.BufferedInputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Enumeration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationVersion;
import org.postgresql.PGConnection;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.runtime.VersionedCache;

/**
 * Reads a {@link Backup} into a workshop that has not been opened yet. The tables are made as they were when the backup was
 * made, filled in one transaction with every constraint checked at its end, and then brought to today's form by the same
 * migrations as any other data. When anything fails, the workshop is as empty as before.
 */
final class Restore {

    private static final Logger LOG = LoggerFactory.getLogger(Restore.class);
    private static final int LONGEST_ABOUT = 1 << 16;
    private static final int LONGEST_SEQUENCES = 1 << 20;
    private static final int LONGEST_VALUE = 1_000;
    private static final int LONGEST_ARRAY = 1 << 20;

    private final Flyway flyway;
    private final DataSource dataSource;

    /** What is being read just now. */
    private String place = "about.txt";

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
            BackupDigests.check(zip, Files.size(file));
            Map<String, Long> sequences = sequences(zip);
            try {
                clean();
                Flyway.configure()
                        .configuration(flyway.getConfiguration())
                        .target(MigrationVersion.fromVersion(schema))
                        .load()
                        .migrate();
                fill(zip, sequences);
                flyway.migrate();
            } catch (RuntimeException | SQLException | IOException e) {
                clean();
                flyway.migrate();
                throw e;
            }
        } catch (ZipException noZip) {
            throw new Refused("database.restore.no-backup");
        } catch (IOException | SQLException | FlywayException e) {
            throw refusal(e);
        } finally {
            forgetOldTables();
        }
    }

    /** What the database says is written down here, not told: it is in no one's words. */
    private RuntimeException refusal(Exception failed) {
        if (failed instanceof SQLException sql
                && String.valueOf(sql.getSQLState()).matches("(08|53|57|58).*")) {
            return new IllegalStateException("The database could not take the backup", sql);
        }
        LOG.warn("A backup could not be read back", failed);
        return new Refused("database.restore.damaged", place);
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
            facts.load(new ByteArrayInputStream(in.readNBytes(LONGEST_ABOUT)));
        } catch (IllegalArgumentException malformed) {
            throw new Refused("database.restore.no-backup");
        }
        String format = facts.getProperty("format", "");
        String schema = facts.getProperty("schema", "");
        boolean sealed = zip.getEntry(BackupDigests.ENTRY) != null;
        boolean known = sealed ? format.equals(Backup.FORMAT) : format.equals(Backup.FORMAT_WITHOUT_DIGESTS);
        if (!known || !schema.matches("[0-9]{1,9}")) {
            throw new Refused("database.restore.no-backup");
        }
        MigrationVersion made = MigrationVersion.fromVersion(schema);
        MigrationVersion newest = MigrationVersion.EMPTY;
        boolean ours = false;
        for (var migration : flyway.info().all()) {
            if (migration.getVersion() != null) {
                newest = migration.getVersion().compareTo(newest) > 0 ? migration.getVersion() : newest;
                ours |= migration.getVersion().equals(made);
            }
        }
        if (made.compareTo(newest) > 0) {
            throw new Refused("database.restore.newer");
        }
        if (!ours) {
            throw new Refused("database.restore.no-backup");
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

    private void fill(ZipFile zip, Map<String, Long> sequences) throws SQLException, IOException {
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
                place = "sequences";
                setSequences(connection, sequences);
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

    private void fillTables(Connection connection, ZipFile zip, List<String> tables) throws SQLException, IOException {
        List<String> known = new ArrayList<>(tables);
        for (Enumeration<? extends ZipEntry> all = zip.entries(); all.hasMoreElements(); ) {
            ZipEntry entry = all.nextElement();
            if (!entry.getName().startsWith("tables/")) {
                continue;
            }
            String table = entry.getName().substring("tables/".length());
            place = table;
            if (!known.remove(table)) {
                throw new Refused("database.restore.damaged", table);
            }
            try (InputStream in = new BufferedInputStream(zip.getInputStream(entry), 1 << 16)) {
                String columns = firstLine(in);
                if (!columns.equals(String.join(",", Backup.columns(connection, table)))) {
                    throw new Refused("database.restore.damaged", table);
                }
                connection
                        .unwrap(PGConnection.class)
                        .getCopyAPI()
                        .copyIn(
                                "copy " + Backup.quoted(table) + " (" + columns + ") from stdin",
                                new BoundedFields(in, longest(connection, table)));
            }
        }
        if (!known.isEmpty()) {
            throw new Refused("database.restore.damaged", known.getFirst());
        }
    }

    /** How long a value of each column can be in the file: a text, a picture or JSON has no bound, a number or a day has. */
    private static int[] longest(Connection connection, String table) throws SQLException {
        return Backup.list(
                        connection,
                        "select case when atttypid in ('text'::regtype, 'varchar'::regtype, 'bytea'::regtype,"
                                + " 'json'::regtype, 'jsonb'::regtype) then " + BoundedFields.UNBOUNDED
                                + " when typcategory = 'A' then " + LONGEST_ARRAY + " else " + LONGEST_VALUE
                                + " end from pg_attribute join pg_type on pg_type.oid = atttypid where attrelid ="
                                + " 'public."
                                + Backup.quoted(table) + "'::regclass and attnum > 0 and not attisdropped"
                                + " and attgenerated = '' order by attnum")
                .stream()
                .mapToInt(Integer::parseInt)
                .toArray();
    }

    private static Map<String, Long> sequences(ZipFile zip) throws IOException {
        Map<String, Long> sequences = new LinkedHashMap<>();
        try (InputStream in = zip.getInputStream(zip.getEntry("sequences"))) {
            String all = new String(in.readNBytes(LONGEST_SEQUENCES), StandardCharsets.UTF_8);
            for (String line : all.lines().toList()) {
                String[] parts = line.split("\t");
                if (parts.length != 2 || !parts[1].matches("-?[0-9]{1,18}")) {
                    throw new Refused("database.restore.damaged", "sequences");
                }
                sequences.put(parts[0], Long.parseLong(parts[1]));
            }
        }
        return sequences;
    }

    private static void setSequences(Connection connection, Map<String, Long> sequences) throws SQLException {
        try (PreparedStatement set = connection.prepareStatement("select setval(format('public.%I', ?::text), ?)")) {
            for (Map.Entry<String, Long> sequence : sequences.entrySet()) {
                set.setString(1, sequence.getKey());
                set.setLong(2, sequence.getValue());
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
