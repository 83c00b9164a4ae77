package puzzleworkshop.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Currency;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import puzzleworkshop.access.FirstSteps;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.UnitSystem;
import puzzleworkshop.support.CleanDatabase;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.Seeds;
import puzzleworkshop.workshop.WorkshopProfile;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class BackupIT {

    @TempDir
    static Path folder;

    /** A second, empty workshop to restore into. */
    static EmbeddedServer other;

    @Autowired
    Backup backup;

    @Autowired
    FirstSteps steps;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    DataSource dataSource;

    @BeforeAll
    static void start() {
        other = EmbeddedServer.on(folder.resolve("other").toString());
    }

    @AfterAll
    static void stop() {
        other.close();
    }

    @BeforeEach
    void a_workshop_with_awkward_texts() {
        CleanDatabase.now(dataSource);
        steps.open(
                new WorkshopProfile(
                        "Birch\t&\\N Beam \"ä 木\"",
                        "1 Mill Lane\nOldtown",
                        "",
                        "",
                        Currency.getInstance("EUR"),
                        UnitSystem.MILLIMETRES,
                        ZoneId.of("Europe/Berlin"),
                        ""),
                "Robin",
                "birch paper ink");
    }

    @Test
    void every_table_and_every_sequence_comes_back_as_it_was() throws Exception {
        Path file = backUp("whole.zip");
        new Restore(emptyOther()).from(file);
        try (Connection here = dataSource.getConnection();
                Connection there = connectOther()) {
            assertThat(prints(there)).isEqualTo(prints(here));
            String sequences = "select sequencename || ' ' || coalesce(last_value, 0) from pg_sequences"
                    + " where schemaname = 'public' order by 1";
            assertThat(Backup.list(there, sequences)).isEqualTo(Backup.list(here, sequences));
            String references = "select conrelid::regclass || ' ' || conname || ' ' || pg_get_constraintdef(oid)"
                    + " from pg_constraint where connamespace = 'public'::regnamespace order by 1";
            assertThat(Backup.list(there, references)).isEqualTo(Backup.list(here, references));
            assertThat(Backup.list(there, "select tgname from pg_trigger where tgenabled = 'D'"))
                    .isEmpty();
        }
    }

    @Test
    void a_backup_sees_one_moment_though_work_goes_on() throws Exception {
        Path file = folder.resolve("moment.zip");
        int before;
        try (Connection here = dataSource.getConnection()) {
            before = prints(here).hashCode();
        }
        try (OutputStream out = new WritesMeanwhile(Files.newOutputStream(file))) {
            backup.write(out);
        }
        new Restore(emptyOther()).from(file);
        try (Connection there = connectOther()) {
            assertThat(prints(there).hashCode()).isEqualTo(before);
        }
    }

    @Test
    void a_workshop_where_someone_works_is_not_overwritten() throws Exception {
        Path file = backUp("again.zip");
        Flyway flyway = emptyOther();
        new Restore(flyway).from(file);
        refused("database.restore.not-empty", flyway, file);
    }

    @Test
    void what_is_no_backup_is_refused_and_the_workshop_stays_ready_to_open() throws Exception {
        Flyway flyway = emptyOther();
        flyway.migrate();
        Path text = Files.writeString(folder.resolve("text.zip"), "not a zip at all");
        refused("database.restore.no-backup", flyway, text);
        Path foreign = folder.resolve("foreign.zip");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(foreign))) {
            zip.putNextEntry(new ZipEntry("holiday.txt"));
        }
        refused("database.restore.no-backup", flyway, foreign);
        byte[] whole = Files.readAllBytes(backUp("cut.zip"));
        Path cut = Files.write(folder.resolve("cut.zip"), Arrays.copyOf(whole, whole.length * 2 / 3));
        refused("database.restore.no-backup", flyway, cut);
        readyToOpen();
    }

    @Test
    void a_damaged_table_is_refused_whole_and_the_workshop_stays_ready_to_open() throws Exception {
        Flyway flyway = emptyOther();
        flyway.migrate();
        Path damaged = folder.resolve("damaged.zip");
        copyZip(backUp("sound.zip"), damaged, "tables/account", "id,name\n1\tRobin\n");
        refused("database.restore.damaged", flyway, damaged);
        readyToOpen();
    }

    /** Java's ZipFile reads past a wrong check sum: what was 57.10 came back as 97.10. */
    @Test
    void a_digit_changed_inside_the_file_is_found_before_anything_is_filled() throws Exception {
        Flyway flyway = emptyOther();
        flyway.migrate();
        byte[] whole = Files.readAllBytes(stored(backUp("whole.zip")));
        byte[] name = "Birch".getBytes(StandardCharsets.UTF_8);
        byte[] changed = whole.clone();
        changed[indexOf(whole, name)] = 'P';
        refused("database.restore.damaged", flyway, Files.write(folder.resolve("changed.zip"), changed));
        readyToOpen();
    }

    @Test
    void a_change_with_its_check_sum_made_right_is_found_by_the_digest() throws Exception {
        Path file = folder.resolve("forged.zip");
        copyZip(backUp("sound2.zip"), file, "sequences", "account_id_seq\t77\n");
        Flyway flyway = emptyOther();
        flyway.migrate();
        refused("database.restore.damaged", flyway, file);
        readyToOpen();
    }

    /** Which bits: from the seed, anywhere in the file. */
    @Test
    void of_a_hundred_backups_with_turned_bits_none_comes_back_otherwise_than_it_was() throws Exception {
        byte[] whole = Files.readAllBytes(backUp("whole.zip"));
        Random random = new Random(20261129);
        Path file = folder.resolve("turned.zip");
        int refused = 0;
        for (int i = 0; i < 100; i++) {
            byte[] turned = whole.clone();
            turned[random.nextInt(turned.length)] ^= (byte) (1 << random.nextInt(8));
            Files.write(file, turned);
            try (java.util.zip.ZipFile zip = new java.util.zip.ZipFile(file.toFile())) {
                BackupDigests.check(zip, turned.length);
                // What was turned is nothing that is read: a date, a second copy of a name.
                try (java.util.zip.ZipFile sound = new java.util.zip.ZipFile(
                        Files.write(folder.resolve("sound.zip"), whole).toFile())) {
                    for (ZipEntry entry : java.util.Collections.list(sound.entries())) {
                        assertThat(zip.getInputStream(zip.getEntry(entry.getName()))
                                        .readAllBytes())
                                .as("seed 20261129, file %d, %s", i, entry)
                                .isEqualTo(sound.getInputStream(entry).readAllBytes());
                    }
                }
            } catch (Refused | java.util.zip.ZipException found) {
                refused++;
            }
        }
        assertThat(refused).isGreaterThan(60);
    }

    @Test
    void a_backup_made_before_there_were_digests_comes_back_and_its_check_sums_count() throws Exception {
        Path older = folder.resolve("older.zip");
        withoutDigests(backUp("whole.zip"), older, ZipEntry.DEFLATED);
        new Restore(emptyOther()).from(older);
        Path stored = folder.resolve("older-stored.zip");
        withoutDigests(backUp("whole.zip"), stored, ZipEntry.STORED);
        byte[] bytes = Files.readAllBytes(stored);
        bytes[indexOf(bytes, "Birch".getBytes(StandardCharsets.UTF_8))] = 'P';
        Flyway flyway = emptyOther();
        flyway.migrate();
        refused("database.restore.damaged", flyway, Files.write(stored, bytes));
        readyToOpen();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "format=1\nschema=0\n",
                "format=1\nschema=1..2\n",
                "format=1\nschema=99999999999999999999\n",
                "format=1\nschema=-4\n",
                "format=1\nschema=2\\u00\n",
                "format=\\uZZZZ\nschema=1\n",
                "format=2\nschema=1\n",
                "format=1\n",
                ""
            })
    void odd_headers_are_refused_in_a_sentence(String about) throws Exception {
        Path plain = folder.resolve("plain.zip");
        withoutDigests(backUp("whole.zip"), plain, ZipEntry.DEFLATED);
        Path odd = folder.resolve("odd.zip");
        copyZip(plain, odd, "about.txt", about);
        Flyway flyway = emptyOther();
        flyway.migrate();
        refused("database.restore.no-backup", flyway, odd);
    }

    @Test
    void what_the_database_says_about_damage_is_not_told() throws Exception {
        Path plain = folder.resolve("plain.zip");
        withoutDigests(backUp("whole.zip"), plain, ZipEntry.DEFLATED);
        Path odd = folder.resolve("odd.zip");
        String account = new String(contentOf(plain, "tables/account"), StandardCharsets.UTF_8);
        copyZip(plain, odd, "tables/account", account.substring(0, account.indexOf('\n') + 1) + "no row\n");
        assertThatThrownBy(() -> new Restore(emptyOther()).from(odd))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.sentence().arguments()).containsExactly("account"));
    }

    @Test
    void a_few_kilobytes_that_unpack_to_gigabytes_are_refused() throws Exception {
        Path bomb = folder.resolve("bomb.zip");
        try (ZipOutputStream zip = new ZipOutputStream(Files.newOutputStream(bomb))) {
            zip.putNextEntry(new ZipEntry("about.txt"));
            zip.write("format=1\nschema=200\n".getBytes(StandardCharsets.UTF_8));
            zip.putNextEntry(new ZipEntry("sequences"));
            zip.putNextEntry(new ZipEntry("tables/account"));
            byte[] zeros = new byte[1 << 20];
            for (int i = 0; i < 600; i++) {
                zip.write(zeros);
            }
        }
        refused("database.restore.bomb", emptyOther(), bomb);
    }

    @Test
    void a_backup_of_a_newer_program_is_refused() throws Exception {
        Path newer = folder.resolve("newer.zip");
        copyZip(backUp("today.zip"), newer, "about.txt", "format=2\nschema=9999\nmade=2030-01-01T00:00:00Z\n");
        refused("database.restore.newer", emptyOther(), newer);
    }

    private Path backUp(String name) throws IOException {
        Path file = folder.resolve(name);
        try (OutputStream out = Files.newOutputStream(file)) {
            backup.write(out);
        }
        return file;
    }

    /** Adds an account while the backup is being written. */
    private final class WritesMeanwhile extends java.io.FilterOutputStream {

        private boolean done;

        WritesMeanwhile(OutputStream out) {
            super(out);
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            if (!done) {
                done = true;
                try (Connection connection = dataSource.getConnection()) {
                    connection.createStatement().execute("update workshop_profile set name = 'renamed meanwhile'");
                } catch (SQLException e) {
                    throw new IOException(e);
                }
            }
            out.write(bytes, from, length);
        }
    }

    private static byte[] contentOf(Path file, String entry) throws IOException {
        try (java.util.zip.ZipFile zip = new java.util.zip.ZipFile(file.toFile())) {
            return zip.getInputStream(zip.getEntry(entry)).readAllBytes();
        }
    }

    /** The same with its entries not packed, so that their bytes can be found. */
    private static Path stored(Path file) throws IOException {
        Path stored = folder.resolve("stored.zip");
        copy(file, stored, ZipEntry.STORED, name -> true, Backup.FORMAT);
        return stored;
    }

    private static void withoutDigests(Path from, Path to, int method) throws IOException {
        copy(from, to, method, name -> !name.equals(BackupDigests.ENTRY), Backup.FORMAT_WITHOUT_DIGESTS);
    }

    private static void copy(Path from, Path to, int method, java.util.function.Predicate<String> which, String format)
            throws IOException {
        try (java.util.zip.ZipFile zip = new java.util.zip.ZipFile(from.toFile());
                ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(to))) {
            for (ZipEntry entry : java.util.Collections.list(zip.entries())) {
                if (!which.test(entry.getName())) {
                    continue;
                }
                byte[] content = zip.getInputStream(entry).readAllBytes();
                if (entry.getName().equals("about.txt")) {
                    content = new String(content, StandardCharsets.UTF_8)
                            .replace("format=2", "format=" + format)
                            .getBytes(StandardCharsets.UTF_8);
                }
                ZipEntry copy = new ZipEntry(entry.getName());
                copy.setMethod(method);
                copy.setSize(content.length);
                java.util.zip.CRC32 sum = new java.util.zip.CRC32();
                sum.update(content);
                copy.setCrc(sum.getValue());
                out.putNextEntry(copy);
                out.write(content);
            }
        }
    }

    private static int indexOf(byte[] bytes, byte[] wanted) {
        return new String(bytes, StandardCharsets.ISO_8859_1).indexOf(new String(wanted, StandardCharsets.ISO_8859_1));
    }

    private static void copyZip(Path from, Path to, String changed, String content) throws IOException {
        try (java.util.zip.ZipFile zip = new java.util.zip.ZipFile(from.toFile());
                ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(to))) {
            for (ZipEntry entry : java.util.Collections.list(zip.entries())) {
                out.putNextEntry(new ZipEntry(entry.getName()));
                out.write(
                        entry.getName().equals(changed)
                                ? content.getBytes(StandardCharsets.UTF_8)
                                : zip.getInputStream(entry).readAllBytes());
            }
        }
    }

    private static Flyway emptyOther() {
        Flyway flyway = Flyway.configure()
                .dataSource(other.url(), other.user(), other.password())
                .locations("classpath:db/migration")
                .cleanDisabled(false)
                .load();
        flyway.clean();
        return flyway;
    }

    private static Connection connectOther() throws SQLException {
        return DriverManager.getConnection(other.url(), other.user(), other.password());
    }

    private static void refused(String key, Flyway flyway, Path file) {
        assertThatThrownBy(() -> new Restore(flyway).from(file))
                .isInstanceOfSatisfying(
                        Refused.class,
                        refused -> assertThat(refused.sentence().key()).isEqualTo(key));
    }

    private static void readyToOpen() throws SQLException {
        try (Connection there = connectOther()) {
            assertThat(Backup.list(there, "select count(*) from account")).containsExactly("0");
            assertThat(Backup.list(there, "select count(*) from trade_numbers")).containsExactly("1");
        }
    }

    /** A print of each table's content, whatever the order of its rows. */
    private static Map<String, String> prints(Connection connection) throws SQLException {
        Map<String, String> prints = new TreeMap<>();
        for (String table : Backup.tables(connection)) {
            prints.put(
                    table,
                    Backup.list(
                                    connection,
                                    "select count(*) || ' ' || coalesce(md5(string_agg(t::text, E'\\n'"
                                            + " order by t::text)), '') from " + Backup.quoted(table) + " t")
                            .getFirst());
        }
        return prints;
    }

    /** What is said before it is made, against what it then is. */
    @Test
    void a_backup_says_about_how_large_it_will_be() throws Exception {
        java.util.Random random = new java.util.Random(Seeds.from(4));
        for (int i = 0; i < 4; i++) {
            byte[] photo = new byte[1_500_000];
            random.nextBytes(photo);
            jdbc.sql("""
                with p as (insert into picture (id, file_name, format, width_px, height_px, orientation, sha256, byte_count,
                    colour_model, colour_bits, has_alpha, received_at)
                  values (gen_random_uuid(), 'noise.jpg', 'JPEG', 10, 10, 1, repeat('0', 64), 1500000, 'RGB', 8, false, now())
                  returning id)
                insert into picture_original select id, :photo from p
                """).param("photo", photo).update();
        }
        long said = backup.expectedBytes();
        long made = java.nio.file.Files.size(backUp("sized.zip"));
        assertThat((double) said / made).as("said %d, made %d", said, made).isBetween(0.8, 1.25);
    }
}
