package puzzleworkshop.support.hostile;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import java.util.zip.CRC32;
import java.util.zip.Deflater;

/** Puts bytes together. */
final class Bytes {

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();

    Bytes put(int... values) {
        for (int value : values) {
            out.write(value);
        }
        return this;
    }

    Bytes put(byte[] bytes) {
        out.writeBytes(bytes);
        return this;
    }

    Bytes text(String latin) {
        return put(latin.getBytes(StandardCharsets.ISO_8859_1));
    }

    Bytes big16(int value) {
        return put(value >> 8, value);
    }

    Bytes big32(long value) {
        return put((int) (value >> 24), (int) (value >> 16), (int) (value >> 8), (int) value);
    }

    Bytes little16(int value) {
        return put(value, value >> 8);
    }

    Bytes little32(long value) {
        return put((int) value, (int) (value >> 8), (int) (value >> 16), (int) (value >> 24));
    }

    int size() {
        return out.size();
    }

    byte[] made() {
        return out.toByteArray();
    }

    static byte[] same(int value, int count) {
        byte[] bytes = new byte[count];
        Arrays.fill(bytes, (byte) value);
        return bytes;
    }

    /**
     * So many zeros, deflated: a thousandth of them. What a deflater that has flushed makes of a mebibyte of zeros after
     * another is the same each time, so it is worked out once and repeated; gigabytes of zeros cost no time.
     */
    static byte[] deflatedZeros(long count) {
        Deflater deflater = new Deflater(9, true);
        byte[] zeros = new byte[1 << 20];
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(new byte[] {0x78, (byte) 0xDA});
        long left = count;
        if (left >= zeros.length) {
            out.writeBytes(flushed(deflater, zeros));
            left -= zeros.length;
        }
        if (left >= zeros.length) {
            byte[] again = flushed(deflater, zeros);
            for (; left >= zeros.length; left -= zeros.length) {
                out.writeBytes(again);
            }
        }
        deflater.setInput(zeros, 0, (int) left);
        deflater.finish();
        byte[] block = new byte[1 << 16];
        while (!deflater.finished()) {
            out.write(block, 0, deflater.deflate(block));
        }
        deflater.end();
        // RFC 1950: Adler-32 of zeros; the one sum stays 1, the other grows by it with every byte
        out.writeBytes(new Bytes().big16((int) (count % 65_521)).big16(1).made());
        return out.toByteArray();
    }

    private static byte[] flushed(Deflater deflater, byte[] bytes) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        byte[] block = new byte[1 << 16];
        deflater.setInput(bytes);
        int made = deflater.deflate(block, 0, block.length, Deflater.SYNC_FLUSH);
        while (made > 0) {
            out.write(block, 0, made);
            made = deflater.deflate(block, 0, block.length, Deflater.SYNC_FLUSH);
        }
        return out.toByteArray();
    }

    static long crc(byte[] bytes) {
        CRC32 crc = new CRC32();
        crc.update(bytes);
        return crc.getValue();
    }

    static byte[] cut(byte[] whole, double share) {
        return Arrays.copyOf(whole, (int) (whole.length * share));
    }

    /** Some bits turned, none of the first four bytes. */
    static byte[] flipped(byte[] whole, Random random, int bits) {
        byte[] bytes = whole.clone();
        for (int i = 0; i < bits; i++) {
            bytes[4 + random.nextInt(bytes.length - 4)] ^= (byte) (1 << random.nextInt(8));
        }
        return bytes;
    }
}
