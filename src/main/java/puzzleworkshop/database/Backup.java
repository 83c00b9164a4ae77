package puzzleworkshop.database;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.sql.DataSource;
import org.postgresql.PGConnection;
import org.springframework.stereotype.Service;

/**
 * Everything the workshop keeps, pictures included, in one zip file: each table as PostgreSQL's own text copy, all seen
 * at one moment (one REPEATABLE READ transaction), while work goes on. The file is independent of PostgreSQL's version
 * and holds the migration it was made at; {@link Restore} reads it.
 *
 * <p>Layout: {@code about.txt} (key=value lines), {@code tables/NAME} with the columns in its first line,
 * {@code sequences} (name, last value), and {@code digests} of all of them at the end ({@link BackupDigests}), so that a
 * file which was cut short or changed is recognised.
 */
@Service
public class Backup {

    static final String FORMAT = "2";

    /** Before there were digests. */
    static final String FORMAT_WITHOUT_DIGESTS = "1";

    static final String HISTORY = "flyway_schema_history";

    /** Measured on photos and on the demo workshop's rows. */
    private static final double PACKED_BINARY = 1.15;

    private static final double PACKED_TEXT = 0.3;

    private final DataSource dataSource;
    private final Clock clock;

    Backup(DataSource dataSource, Clock clock) {
        this.dataSource = dataSource;
        this.clock = clock;
    }

    /** Writes the whole backup; the stream is flushed and left open. */
    public void write(OutputStream out) throws IOException {
        try (Connection connection = dataSource.getConnection()) {
            connection.setAutoCommit(false);
            try (Statement statement = connection.createStatement()) {
                statement.execute("set transaction isolation level repeatable read, read only");
                ZipOutputStream zip =
                        new ZipOutputStream(new BufferedOutputStream(out, 1 << 16), StandardCharsets.UTF_8);
                zip.setLevel(Deflater.BEST_SPEED);
                write(connection, zip);
                zip.finish();
                zip.flush();
            } finally {
                connection.rollback();
                connection.setAutoCommit(true);
            }
        } catch (SQLException e) {
            throw new IOException("The database could not be read for a backup", e);
        }
    }

    /**
     * How many bytes a backup made now will have, roughly. A byte of a picture is written as two hexadecimal digits, which
     * the zip file packs to a little over one byte again; rows of text shrink to about a third.
     */
    public long expectedBytes() {
        try (Connection connection = dataSource.getConnection()) {
            Set<String> carried = Set.copyOf(tables(connection));
            long binary = 0;
            for (String sum : list(connection, """
                select format('select coalesce(sum(octet_length(%%I)), 0) from %%I', column_name, table_name)
                  from information_schema.columns where table_schema = 'public' and data_type = 'bytea'
                   and table_name = any ('{%s}')
                """.formatted(String.join(",", carried)))) {
                binary += number(connection, sum);
            }
            long all = number(connection, """
                select coalesce(sum(pg_table_size(format('public.%%I', name)::regclass)), 0)
                  from unnest('{%s}'::text[]) name
                """.formatted(String.join(",", carried)));
            return Math.round(PACKED_BINARY * binary + PACKED_TEXT * Math.max(0, all - binary));
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private static long number(Connection connection, String query) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(query)) {
            row.next();
            return row.getLong(1);
        }
    }

    private void write(Connection connection, ZipOutputStream zip) throws SQLException, IOException {
        BackupDigests digests = new BackupDigests();
        entry(zip, digests, "about.txt", """
            format=%s
            schema=%s
            made=%s
            """.formatted(FORMAT, schemaVersion(connection), clock.instant()));
        for (String table : tables(connection)) {
            String columns = String.join(",", columns(connection, table));
            zip.putNextEntry(new ZipEntry("tables/" + table));
            // The copy closes what it writes to, which ends the entry; the zip goes on.
            OutputStream content = digests.new Entry("tables/" + table, zip);
            content.write((columns + "\n").getBytes(StandardCharsets.UTF_8));
            connection
                    .unwrap(PGConnection.class)
                    .getCopyAPI()
                    .copyOut("copy " + quoted(table) + " (" + columns + ") to stdout", content);
            content.close();
            zip.closeEntry();
        }
        StringBuilder sequences = new StringBuilder();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("""
                    select sequencename, last_value from pg_sequences
                     where schemaname = 'public' and last_value is not null order by 1
                    """)) {
            while (rows.next()) {
                sequences
                        .append(rows.getString(1))
                        .append('\t')
                        .append(rows.getLong(2))
                        .append('\n');
            }
        }
        entry(zip, digests, "sequences", sequences.toString());
        entry(zip, digests, BackupDigests.ENTRY, digests.lines());
    }

    private static void entry(ZipOutputStream zip, BackupDigests digests, String name, String text) throws IOException {
        zip.putNextEntry(new ZipEntry(name));
        try (OutputStream content = digests.new Entry(name, zip)) {
            content.write(text.getBytes(StandardCharsets.UTF_8));
        }
        zip.closeEntry();
    }

    static String schemaVersion(Connection connection) throws SQLException {
        return list(
                        connection,
                        "select version from " + HISTORY
                                + " where success and version is not null order by installed_rank desc limit 1")
                .getFirst();
    }

    /** All tables of ours, by name. */
    static List<String> tables(Connection connection) throws SQLException {
        return list(
                connection,
                "select tablename from pg_tables where schemaname = 'public' and tablename <> '" + HISTORY
                        + "' order by 1");
    }

    /** A table's columns, quoted; without those that the database computes itself. */
    static List<String> columns(Connection connection, String table) throws SQLException {
        return list(
                connection,
                "select quote_ident(attname) from pg_attribute where attrelid = 'public." + quoted(table)
                        + "'::regclass and attnum > 0 and not attisdropped and attgenerated = '' order by attnum");
    }

    static String quoted(String name) {
        return '"' + name.replace("\"", "\"\"") + '"';
    }

    static List<String> list(Connection connection, String query) throws SQLException {
        List<String> found = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(query)) {
            while (rows.next()) {
                found.add(rows.getString(1));
            }
        }
        return found;
    }
}
