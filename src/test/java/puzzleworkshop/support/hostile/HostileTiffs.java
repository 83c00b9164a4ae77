package puzzleworkshop.support.hostile;

import java.util.Map;
import java.util.Random;
import puzzleworkshop.artwork.SamplePictures;

/** TIFFs (TIFF 6.0) and WebPs (RFC 9649) that ask for more than they hold. */
final class HostileTiffs {

    private static final int SHORT = 3;
    private static final int LONG = 4;

    private HostileTiffs() {}

    static void addTo(Map<String, byte[]> files, long seed) {
        files.put("directory-loop.tif", tiff(100, 100, 1, 1, 30_000, 8, new byte[30_000]));
        files.put("directories-two-in-a-circle.tif", circle());
        files.put("directories-100000.tif", chain(100_000));
        files.put("side-2147483647.tif", tiff(0x7FFFFFFF, 0x7FFFFFFF, 1, 0x7FFFFFFF, 100, 0, new byte[100]));
        files.put("strip-of-4-gigabytes.tif", tiff(14_000, 14_000, 1, 14_000, 0xFFFFFFFFL, 0, new byte[100]));
        files.put("strips-14000-all-the-same.tif", tiff(14_000, 14_000, 1, 1, 100, 0, new byte[100]));
        byte[] zeros = Bytes.deflatedZeros(14_000L * 14_000 * 3);
        files.put("deflated-zeros.tif", tiff(14_000, 14_000, 8, 14_000, zeros.length, 0, zeros));
        files.put("run-lengths.tif", tiff(14_000, 14_000, 32773, 14_000, 3 << 20, 0, pairs(3 << 20, 0x81, 0)));
        files.put("lzw-of-nothing.tif", tiff(14_000, 14_000, 5, 14_000, 1 << 20, 0, new byte[1 << 20]));
        files.put("jpeg-in-tiff-of-nothing.tif", tiff(14_000, 14_000, 7, 14_000, 1000, 0, new byte[1000]));
        files.put("fax-of-nothing.tif", tiff(14_000, 14_000, 4, 14_000, 1 << 16, 0, new byte[1 << 16]));
        files.put("kind-of-packing-34712.tif", tiff(2_000, 2_000, 34712, 2_000, 1000, 0, new byte[1000]));
        files.put("tile-65535.tif", tile());
        files.put("bits-64-channels-1000.tif", channels());
        byte[] good = SamplePictures.encode(SamplePictures.leaves(300, 200, seed), "tiff");
        Random random = new Random(seed);
        for (int i = 0; i < 8; i++) {
            files.put("flipped-" + i + ".tif", Bytes.flipped(good, random, 1 + random.nextInt(40)));
            byte[] head = good.clone();
            for (int k = 0; k < 6; k++) {
                int at = Math.max(4, good.length - 300 + random.nextInt(296));
                head[at] = (byte) random.nextInt(256);
            }
            files.put("directory-flipped-" + i + ".tif", head);
        }
        files.put("cut.tif", Bytes.cut(good, 0.5));
        addWebps(files, seed);
    }

    private static void addWebps(Map<String, byte[]> files, long seed) {
        files.put("lossless-one-symbol-29-megapixels.webp", webp("VP8L", lossless(5_400, 5_400, new byte[8])));
        files.put("lossless-16383.webp", webp("VP8L", lossless(16_383, 16_383, new byte[8])));
        Bytes small = new Bytes().put(0x10, 0, 0, 0).put(9, 0, 0, 9, 0, 0);
        files.put(
                "canvas-10-picture-16383.webp",
                new Bytes()
                        .text("RIFF")
                        .little32(4 + 18 + 8 + 20)
                        .text("WEBPVP8X")
                        .little32(10)
                        .put(small.made())
                        .text("VP8L")
                        .little32(20)
                        .put(lossless(16_383, 16_383, new byte[15]))
                        .made());
        Random random = new Random(seed);
        for (int i = 0; i < 14; i++) {
            byte[] noise = new byte[40 + random.nextInt(3000)];
            random.nextBytes(noise);
            files.put("lossless-noise-" + i + ".webp", webp("VP8L", lossless(2_000 + i, 1_500, noise)));
        }
        for (int i = 0; i < 6; i++) {
            byte[] noise = new byte[400 + random.nextInt(3000)];
            random.nextBytes(noise);
            byte[] head = new Bytes()
                    .put(0x10, 2, 0, 0x9D, 0x01, 0x2A)
                    .little16(3000)
                    .little16(3000)
                    .put(noise)
                    .made();
            files.put("lossy-noise-" + i + ".webp", webp("VP8 ", head));
        }
        files.put(
                "length-4-gigabytes.webp",
                new Bytes()
                        .text("RIFF")
                        .little32(0xFFFFFFF0L)
                        .text("WEBPVP8L")
                        .little32(0xFFFFFF00L)
                        .put(lossless(100, 100, new byte[10]))
                        .made());
    }

    private static byte[] webp(String kind, byte[] body) {
        byte[] even = java.util.Arrays.copyOf(body, body.length + (body.length & 1));
        return new Bytes()
                .text("RIFF")
                .little32(12L + even.length)
                .text("WEBP" + kind)
                .little32(body.length)
                .put(even)
                .made();
    }

    private static byte[] lossless(int width, int height, byte[] coded) {
        long packed = width - 1L | (long) (height - 1) << 14;
        return new Bytes().put(0x2F).little32(packed).put(coded).made();
    }

    /** One directory, little-endian, RGB; with {@code next} as the place of the following directory. */
    private static byte[] tiff(
            int width, int height, int packing, int rowsPerStrip, long stripBytes, long next, byte[] strip) {
        int strips = (int) Math.min(20_000, Math.ceilDiv((long) height, rowsPerStrip));
        int entries = 10;
        int lists = 8 + 2 + entries * 12 + 4 + 6;
        int data = lists + (strips > 1 ? 8 * strips : 0);
        Bytes tiff = new Bytes().text("II").little16(42).little32(8).little16(entries);
        entry(tiff, 256, LONG, 1, width);
        entry(tiff, 257, LONG, 1, height);
        entry(tiff, 258, SHORT, 3, lists - 6);
        entry(tiff, 259, SHORT, 1, packing);
        entry(tiff, 262, SHORT, 1, 2);
        entry(tiff, 273, LONG, strips, strips > 1 ? lists : data);
        entry(tiff, 277, SHORT, 1, 3);
        entry(tiff, 278, LONG, 1, rowsPerStrip);
        entry(tiff, 279, LONG, strips, strips > 1 ? lists + 4L * strips : stripBytes);
        entry(tiff, 284, SHORT, 1, 1);
        tiff.little32(next).little16(8).little16(8).little16(8);
        if (strips > 1) {
            for (int i = 0; i < strips; i++) {
                tiff.little32(data);
            }
            for (int i = 0; i < strips; i++) {
                tiff.little32(stripBytes);
            }
        }
        return tiff.put(strip).made();
    }

    private static void entry(Bytes tiff, int tag, int type, long count, long value) {
        tiff.little16(tag).little16(type).little32(count).little32(value);
    }

    private static byte[] circle() {
        Bytes tiff = new Bytes().text("II").little16(42).little32(8);
        for (int next : new int[] {8 + 18, 8}) {
            tiff.little16(1);
            entry(tiff, 330, LONG, 1, 8);
            tiff.little32(next);
        }
        return tiff.made();
    }

    private static byte[] chain(int count) {
        Bytes tiff = new Bytes().text("II").little16(42).little32(8);
        for (int i = 1; i <= count; i++) {
            tiff.little16(1);
            entry(tiff, 256, LONG, 1, 100);
            tiff.little32(i == count ? 0 : 8 + 18L * i);
        }
        return tiff.made();
    }

    private static byte[] tile() {
        Bytes tiff = new Bytes().text("II").little16(42).little32(8).little16(9);
        entry(tiff, 256, LONG, 1, 14_000);
        entry(tiff, 257, LONG, 1, 14_000);
        entry(tiff, 258, SHORT, 1, 8);
        entry(tiff, 259, SHORT, 1, 8);
        entry(tiff, 262, SHORT, 1, 1);
        entry(tiff, 322, LONG, 1, 65_535);
        entry(tiff, 323, LONG, 1, 65_535);
        entry(tiff, 324, LONG, 1, 122);
        byte[] zeros = Bytes.deflatedZeros(2_000_000_000L);
        entry(tiff, 325, LONG, 1, zeros.length);
        return tiff.little32(0).put(zeros).made();
    }

    private static byte[] channels() {
        Bytes tiff = new Bytes().text("II").little16(42).little32(8).little16(8);
        entry(tiff, 256, LONG, 1, 14_000);
        entry(tiff, 257, LONG, 1, 14_000);
        entry(tiff, 258, SHORT, 1, 64);
        entry(tiff, 262, SHORT, 1, 2);
        entry(tiff, 273, LONG, 1, 100);
        entry(tiff, 277, SHORT, 1, 1000);
        entry(tiff, 278, LONG, 1, 14_000);
        entry(tiff, 279, LONG, 1, 1000);
        return tiff.little32(0).put(new byte[1100]).made();
    }

    private static byte[] pairs(int length, int first, int second) {
        byte[] bytes = new byte[length];
        for (int i = 0; i < length; i++) {
            bytes[i] = (byte) (i % 2 == 0 ? first : second);
        }
        return bytes;
    }
}
