package puzzleworkshop.database;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Collections;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import puzzleworkshop.measure.Refused;

/**
 * Whether a backup is what was written: a SHA-256 (FIPS 180-4) of every entry stands in the entry {@code digests}, whose last
 * line is the digest of the lines before it. A zip's own check sums are no help alone: Java reads past a wrong one, and a
 * sum of 32 bits can be right by chance. Backups made before there were digests are held to their check sums.
 *
 * <p>Also bounds what a file may unpack to, since a few kilobytes can hold gigabytes.
 */
final class BackupDigests {

    static final String ENTRY = "digests";

    private static final int MOST_ENTRIES = 1000;
    private static final int MOST_DIGEST_BYTES = 1 << 20;

    /** Repeating rows shrink to a fiftieth at the most; small backups may shrink more. */
    private static final long MOST_TIMES_ITS_SIZE = 50;

    private static final long ALWAYS_ALLOWED = 256L << 20;

    private final Map<String, String> written = new LinkedHashMap<>();

    /** Takes the digest of what is written to it for one entry; closing it closes nothing but the digest. */
    final class Entry extends FilterOutputStream {

        private final String name;
        private final MessageDigest digest = sha256();

        Entry(String name, OutputStream out) {
            super(out);
            this.name = name;
        }

        @Override
        public void write(int value) throws IOException {
            digest.update((byte) value);
            out.write(value);
        }

        @Override
        public void write(byte[] bytes, int from, int length) throws IOException {
            digest.update(bytes, from, length);
            out.write(bytes, from, length);
        }

        @Override
        public void close() throws IOException {
            flush();
            written.put(name, HexFormat.of().formatHex(digest.digest()));
        }
    }

    /** What stands in the entry {@link #ENTRY}. */
    String lines() {
        StringBuilder lines = new StringBuilder();
        written.forEach(
                (name, digest) -> lines.append(digest).append(' ').append(name).append('\n'));
        return lines + digestOf(lines.toString()) + "\n";
    }

    /**
     * Reads every entry to its end before anything is filled.
     *
     * @throws Refused when an entry is damaged, missing, double, foreign, or unpacks to more than a backup would
     */
    static void check(ZipFile zip, long fileBytes) throws IOException {
        Map<String, String> digests = digestsIn(zip);
        long left = Math.max(ALWAYS_ALLOWED, fileBytes * MOST_TIMES_ITS_SIZE);
        if (zip.size() > MOST_ENTRIES) {
            throw new Refused("database.restore.no-backup");
        }
        Map<String, String> found = new LinkedHashMap<>();
        for (ZipEntry entry : Collections.list(zip.entries())) {
            String name = entry.getName();
            if (!name.matches("about\\.txt|sequences|" + ENTRY + "|tables/[a-z_0-9]{1,63}")) {
                throw new Refused("database.restore.no-backup");
            }
            if (found.containsKey(name)) {
                throw damaged(name);
            }
            MessageDigest digest = sha256();
            left -= read(zip, entry, digest, left);
            found.put(name, HexFormat.of().formatHex(digest.digest()));
        }
        if (digests.isEmpty()) {
            return;
        }
        found.remove(ENTRY);
        for (Map.Entry<String, String> entry : found.entrySet()) {
            if (!entry.getValue().equals(digests.remove(entry.getKey()))) {
                throw damaged(entry.getKey());
            }
        }
        if (!digests.isEmpty()) {
            throw damaged(digests.keySet().iterator().next());
        }
    }

    private static long read(ZipFile zip, ZipEntry entry, MessageDigest digest, long most) throws IOException {
        CRC32 sum = new CRC32();
        long length = 0;
        byte[] block = new byte[1 << 16];
        try (InputStream in = zip.getInputStream(entry)) {
            for (int got = in.read(block); got >= 0; got = in.read(block)) {
                length += got;
                if (length > most) {
                    throw new Refused("database.restore.bomb");
                }
                sum.update(block, 0, got);
                digest.update(block, 0, got);
            }
        } catch (IOException broken) {
            throw damaged(entry.getName());
        }
        if (sum.getValue() != entry.getCrc() || entry.getSize() >= 0 && entry.getSize() != length) {
            throw damaged(entry.getName());
        }
        return length;
    }

    /** By entry; empty for a backup of earlier programs. */
    private static Map<String, String> digestsIn(ZipFile zip) throws IOException {
        Map<String, String> digests = new LinkedHashMap<>();
        ZipEntry entry = zip.getEntry(ENTRY);
        if (entry == null) {
            return digests;
        }
        byte[] bytes;
        try (InputStream in = zip.getInputStream(entry)) {
            bytes = in.readNBytes(MOST_DIGEST_BYTES);
        } catch (IOException broken) {
            throw damaged(ENTRY);
        }
        String all = new String(bytes, StandardCharsets.UTF_8);
        int last = all.lastIndexOf('\n', all.length() - 2) + 1;
        if (!all.substring(last).strip().equals(digestOf(all.substring(0, last)))) {
            throw damaged(ENTRY);
        }
        for (String line : all.substring(0, last).split("\n")) {
            int space = line.indexOf(' ');
            if (space < 0 || digests.put(line.substring(space + 1), line.substring(0, space)) != null) {
                throw damaged(ENTRY);
            }
        }
        return digests;
    }

    private static Refused damaged(String entry) {
        return new Refused("database.restore.damaged", entry.replace("tables/", ""));
    }

    private static String digestOf(String text) {
        return HexFormat.of().formatHex(sha256().digest(text.getBytes(StandardCharsets.UTF_8)));
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
