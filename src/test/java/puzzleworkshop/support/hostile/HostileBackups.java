package puzzleworkshop.support.hostile;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Backups that were damaged or made to do harm. All but two come from one that an earlier program really made. */
public final class HostileBackups {

    private HostileBackups() {}

    private record Entry(String name, byte[] content) {}

    public static Map<String, byte[]> all(long seed) {
        byte[] sound = sound();
        Map<String, byte[]> files = new LinkedHashMap<>();
        Random random = new Random(seed);
        for (int i = 0; i < 40; i++) {
            files.put("flipped-" + i + ".zip", Bytes.flipped(sound, random, 1 + i / 10));
        }
        for (int i = 1; i < 15; i++) {
            files.put("cut-" + i + ".zip", Bytes.cut(sound, i / 15.0));
        }
        files.put("nothing.zip", new byte[0]);
        files.put("zeros.zip", new byte[100_000]);
        files.put(
                "end-only.zip",
                new Bytes().text("PK").put(5, 6).put(new byte[18]).made());
        files.put("text.zip", "a backup, surely".getBytes(StandardCharsets.UTF_8));
        files.put("twice.zip", new Bytes().put(sound).put(sound).made());
        files.put(
                "with-something-before.zip",
                new Bytes().text("#!/bin/sh\n").put(sound).made());
        files.put(
                "with-something-behind.zip",
                new Bytes().put(sound).put(Bytes.same('x', 70_000)).made());
        List<Entry> entries = entries(sound);
        String about = text(entries, "about.txt");
        for (String schema : new String[] {
            "0", "-1", "1..2", "99999999999", "99999999999999999999", "", "abc", "1.5", "2147483648", "9999"
        }) {
            files.put(
                    "schema-" + schema + ".zip",
                    with(entries, "about.txt", about.replaceAll("schema=.*", "schema=" + schema)));
        }
        files.put("format-2-without-digests.zip", with(entries, "about.txt", about.replace("format=1", "format=2")));
        files.put("format-3.zip", with(entries, "about.txt", about.replace("format=1", "format=3")));
        files.put("about-escape.zip", with(entries, "about.txt", about + "x=\\uZZZZ\n"));
        files.put("about-empty.zip", with(entries, "about.txt", ""));
        files.put("about-huge.zip", with(entries, "about.txt", "a=b\n".repeat(10_000_000)));
        files.put("digests-empty.zip", with(entries, "digests", ""));
        files.put("digests-of-noise.zip", with(entries, "digests", "a b\nc d\n\u0000\n"));
        files.put("sequences-of-words.zip", with(entries, "sequences", "a b c\n\t\t\n"));
        files.put("sequences-huge-number.zip", with(entries, "sequences", "account_id_seq\t99999999999999999999\n"));
        files.put("sequences-negative.zip", with(entries, "sequences", "account_id_seq\t-5\n"));
        files.put("sequences-unknown.zip", with(entries, "sequences", "pg_catalog.x'; drop table account; --\t5\n"));
        files.put("zip-slip.zip", with(entries, "../../../../tmp/slipped", "x"));
        files.put("zip-slip-table.zip", with(entries, "tables/../../account", "x"));
        files.put("absolute.zip", with(entries, "/etc/passwd", "x"));
        files.put("foreign-entry.zip", with(entries, "virus.exe", "MZ"));
        files.put("table-unknown.zip", with(entries, "tables/nobody_knows", "id\n1\n"));
        files.put("table-of-the-database.zip", with(entries, "tables/pg_authid", "rolname\nx\n"));
        files.put("table-of-migrations.zip", with(entries, "tables/flyway_schema_history", "version\n1\n"));
        files.put("name-with-zero.zip", with(entries, "tables/acc\u0000ount", "id\n"));
        files.put("name-long.zip", with(entries, "tables/" + "a".repeat(60_000), "id\n"));
        for (String columns : new String[] {
            "", "\n", "id", "id,name", "id) from program 'touch /tmp/owned' --", "\"id\"", "x".repeat(50_000)
        }) {
            files.put("columns-" + files.size() + ".zip", with(entries, "tables/account", columns + "\nx\n"));
        }
        String account = text(entries, "tables/account");
        String head = account.substring(0, account.indexOf('\n') + 1);
        for (String rows : new String[] {
            "no row\n",
            "\\.\n",
            "\\.\nselect 1;\n",
            "\u0000\n",
            "\t".repeat(1000) + "\n",
            account.substring(head.length()).repeat(2)
        }) {
            files.put("rows-" + files.size() + ".zip", with(entries, "tables/account", head + rows));
        }
        files.put("rows-endless.zip", with(entries, "tables/account", head + "1\tx\n".repeat(5_000_000)));
        files.put("row-of-80-megabytes.zip", with(entries, "tables/account", head + "x".repeat(80_000_000)));
        files.put(
                "orphans.zip",
                with(
                        entries,
                        "tables/customer",
                        text(entries, "tables/customer").replaceAll("(?s)\n.*", "\n")));
        files.put("missing-table.zip", without(entries, "tables/account"));
        files.put("missing-about.zip", without(entries, "about.txt"));
        files.put("missing-sequences.zip", without(entries, "sequences"));
        files.put("double-entry.zip", doubled(entries));
        files.put("wrong-sum.zip", wrongSum(sound));
        files.put("length-of-4-gigabytes.zip", lengths(sound));
        files.put("bomb-of-2-gigabytes.zip", bomb(entries, 2_000_000_000L));
        files.put("bomb-in-sequences.zip", bombIn(entries, "sequences"));
        files.put("bomb-in-about.zip", bombIn(entries, "about.txt"));
        files.put("entries-60000.zip", many(60_000));
        files.put("entries-overlapping.zip", overlapping());
        files.put("zip-in-zip.zip", with(entries, "tables/inner", new String(sound, StandardCharsets.ISO_8859_1)));
        files.put("sound.zip", sound);
        files.put("sound-packed-again.zip", zip(entries));
        return files;
    }

    private static byte[] sound() {
        try (InputStream in = HostileBackups.class.getResourceAsStream("/backups/schema-145.zip")) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Entry> entries(byte[] file) {
        List<Entry> entries = new ArrayList<>();
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(file))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                entries.add(new Entry(entry.getName(), zip.readAllBytes()));
            }
            return entries;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text(List<Entry> entries, String name) {
        return entries.stream()
                .filter(entry -> entry.name().equals(name))
                .map(entry -> new String(entry.content(), StandardCharsets.UTF_8))
                .findFirst()
                .orElseThrow();
    }

    /** With one entry put in or in place of its like. */
    private static byte[] with(List<Entry> entries, String name, String content) {
        List<Entry> changed = new ArrayList<>(entries);
        changed.removeIf(entry -> entry.name().equals(name));
        changed.add(new Entry(name, content.getBytes(StandardCharsets.UTF_8)));
        return zip(changed);
    }

    private static byte[] without(List<Entry> entries, String name) {
        List<Entry> fewer = new ArrayList<>(entries);
        fewer.removeIf(entry -> entry.name().equals(name));
        return zip(fewer);
    }

    private static byte[] zip(List<Entry> entries) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Entry entry : entries) {
                zip.putNextEntry(new ZipEntry(entry.name()));
                zip.write(entry.content());
                zip.closeEntry();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** A name changed in place to another's, of the same length, so that it stands there twice. */
    private static byte[] doubled(List<Entry> entries) {
        List<Entry> more = new ArrayList<>(entries);
        more.add(new Entry("tables/accounx", new byte[] {'x'}));
        byte[] file = zip(more);
        String latin = new String(file, StandardCharsets.ISO_8859_1);
        return latin.replace("tables/accounx", "tables/account").getBytes(StandardCharsets.ISO_8859_1);
    }

    /** The check sum in the first header of the list at the end (APPNOTE 4.3.12: signature, 12 bytes, then the sum). */
    private static byte[] wrongSum(byte[] sound) {
        byte[] file = sound.clone();
        file[listAt(file) + 16] ^= 1;
        return file;
    }

    private static byte[] lengths(byte[] sound) {
        byte[] file = sound.clone();
        int at = listAt(file) + 20;
        for (int i = 0; i < 8; i++) {
            file[at + i] = (byte) 0xFE;
        }
        return file;
    }

    private static int listAt(byte[] file) {
        return new String(file, StandardCharsets.ISO_8859_1).indexOf("PK\u0001\u0002");
    }

    private static byte[] bomb(List<Entry> entries, long length) {
        return bombIn(entries, "tables/customer", length);
    }

    private static byte[] bombIn(List<Entry> entries, String name) {
        return bombIn(entries, name, 1_000_000_000L);
    }

    private static byte[] bombIn(List<Entry> entries, String name, long length) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        byte[] zeros = new byte[1 << 20];
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            for (Entry entry : entries) {
                zip.putNextEntry(new ZipEntry(entry.name()));
                zip.write(entry.content());
                for (long left = entry.name().equals(name) ? length : 0; left > 0; left -= zeros.length) {
                    zip.write(zeros);
                }
                zip.closeEntry();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    private static byte[] many(int count) {
        List<Entry> entries = new ArrayList<>();
        entries.add(new Entry("about.txt", "format=1\nschema=145\n".getBytes(StandardCharsets.UTF_8)));
        entries.add(new Entry("sequences", new byte[0]));
        for (int i = 0; i < count; i++) {
            entries.add(new Entry("tables/t" + i, new byte[] {'\n'}));
        }
        return zip(entries);
    }

    /** Five hundred entries of the list that all name the same packed bytes. */
    private static byte[] overlapping() {
        byte[] packed = Bytes.deflatedZeros(20_000_000);
        byte[] raw = java.util.Arrays.copyOfRange(packed, 2, packed.length - 4);
        Bytes file = new Bytes().text("PK").put(3, 4, 20, 0, 0, 0, 8, 0, 0, 0, 0, 0);
        file.little32(0)
                .little32(raw.length)
                .little32(20_000_000)
                .little16(1)
                .little16(0)
                .text("x")
                .put(raw);
        int list = file.size();
        for (int i = 0; i < 500; i++) {
            String name = i == 0 ? "about.txt" : i == 1 ? "sequences" : "tables/t" + i;
            file.text("PK").put(1, 2, 20, 0, 20, 0, 0, 0, 8, 0, 0, 0, 0, 0);
            file.little32(0).little32(raw.length).little32(20_000_000).little16(name.length());
            file.put(new byte[8]).little32(0).little32(0).text(name);
        }
        int end = file.size();
        file.text("PK")
                .put(5, 6, 0, 0, 0, 0)
                .little16(500)
                .little16(500)
                .little32(end - list)
                .little32(list);
        return file.little16(0).made();
    }
}
