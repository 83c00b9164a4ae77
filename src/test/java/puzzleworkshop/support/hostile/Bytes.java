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

    /** So many zeros, deflated: a thousandth of them. */
    static byte[] deflatedZeros(long count) {
        Deflater deflater = new Deflater(9);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        byte[] zeros = new byte[1 << 16];
        byte[] block = new byte[1 << 16];
        for (long left = count; left > 0; left -= zeros.length) {
            deflater.setInput(zeros, 0, (int) Math.min(left, zeros.length));
            while (!deflater.needsInput()) {
                out.write(block, 0, deflater.deflate(block));
            }
        }
        deflater.finish();
        while (!deflater.finished()) {
            out.write(block, 0, deflater.deflate(block));
        }
        deflater.end();
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
