package puzzleworkshop.support.hostile;

import java.util.Map;
import java.util.Random;
import puzzleworkshop.artwork.SamplePictures;

/** JPEGs (ITU-T T.81) that ask for more than they hold. */
final class HostileJpegs {

    private HostileJpegs() {}

    static void addTo(Map<String, byte[]> files, long seed) {
        files.put("scans-800-of-14000.jpg", several(14_000, 14_000, 800, 0x11));
        files.put("scans-90-of-4000.jpg", several(4_000, 4_000, 90, 0x11));
        files.put("scans-60-of-5000.jpg", several(5_000, 5_000, 60, 0x22));
        files.put("scans-99-of-3800.jpg", several(3_800, 3_800, 99, 0x11));
        files.put("progressive-14100.jpg", several(14_100, 14_100, 2, 0x11));
        files.put("progressive-7000.jpg", several(7_000, 7_000, 3, 0x11));
        files.put("scans-60000-of-16.jpg", several(16, 16, 60_000, 0x11));
        files.put("channel-by-channel-14000.jpg", channelByChannel(14_000, 14_000));
        files.put("baseline-200-megapixels-of-nothing.jpg", baseline(29_999, 6_666, 3));
        files.put("grey-200-megapixels-of-nothing.jpg", baseline(14_000, 14_200, 1));
        files.put("inks-190-megapixels-of-nothing.jpg", baseline(14_000, 13_800, 4));
        files.put("inks-several-scans.jpg", several(6_000, 6_000, 40, 0x11, 4));
        files.put("side-65535.jpg", baseline(65_535, 3_000, 3));
        files.put("height-0.jpg", baseline(1000, 0, 3));
        files.put("width-0.jpg", baseline(0, 1000, 3));
        files.put("sampling-15.jpg", frame(0xC0, 2000, 2000, 3, 0xFF, 1));
        files.put("sampling-0.jpg", frame(0xC2, 2000, 2000, 3, 0x00, 1));
        files.put("channels-200.jpg", frame(0xC0, 2000, 2000, 200, 0x11, 1));
        files.put(
                "fill-40-megabytes.jpg",
                new Bytes().put(0xFF, 0xD8).put(Bytes.same(0xFF, 40 << 20)).made());
        files.put(
                "fill-in-scan.jpg",
                new Bytes()
                        .put(open(0xC0, 3000, 3000, 3, 0x11))
                        .put(scan(3, 0, 63))
                        .put(Bytes.same(0xFF, 20 << 20))
                        .put(0xFF, 0xD9)
                        .made());
        Bytes restarts = new Bytes().put(open(0xC0, 5000, 5000, 3, 0x11)).put(scan(3, 0, 63));
        for (int i = 0; i < 500_000; i++) {
            restarts.put(0xFF, 0xD0 + i % 8);
        }
        files.put("restarts-500000.jpg", restarts.put(0xFF, 0xD9).made());
        Bytes remarks = new Bytes().put(0xFF, 0xD8);
        for (int i = 0; i < 100_000; i++) {
            remarks.put(0xFF, 0xFE, 0, 2);
        }
        files.put("remarks-100000.jpg", remarks.put(0xFF, 0xD9).made());
        byte[] good = SamplePictures.encode(SamplePictures.leaves(400, 300, seed), "jpg");
        files.put("exif-loop.jpg", SamplePictures.withSegment(good, 0xE1, exifLoop()));
        files.put("profile-of-noise.jpg", SamplePictures.withProfile(good, noise(60_000, seed)));
        files.put("profile-with-huge-table.jpg", SamplePictures.withProfile(good, hugeTable()));
        files.put("two-frames.jpg", twoFrames());
        Random random = new Random(seed);
        for (int i = 0; i < 12; i++) {
            files.put("flipped-" + i + ".jpg", Bytes.flipped(good, random, 1 + random.nextInt(30)));
        }
        for (int i = 1; i < 6; i++) {
            files.put("cut-" + i + ".jpg", Bytes.cut(good, i / 6.0));
            files.put(
                    "cut-with-end-" + i + ".jpg",
                    new Bytes().put(Bytes.cut(good, i / 6.0)).put(0xFF, 0xD9).made());
        }
    }

    private static byte[] several(int width, int height, int scans, int sampling) {
        return several(width, height, scans, sampling, 3);
    }

    /** Progressive, with scans that hold nothing: the reader takes what is missing for zeros and works all pixels out. */
    private static byte[] several(int width, int height, int scans, int sampling, int channels) {
        Bytes jpeg = new Bytes()
                .put(open(0xC2, width, height, channels, sampling))
                .put(scan(channels, 0, 0))
                .put(0);
        for (int i = 1; i < scans; i++) {
            jpeg.put(0xFF, 0xDA, 0, 8, 1, 1 + i % channels, 0, 1, 63, 0).put(0);
        }
        return jpeg.put(0xFF, 0xD9).made();
    }

    private static byte[] channelByChannel(int width, int height) {
        Bytes jpeg = new Bytes().put(open(0xC0, width, height, 3, 0x11));
        for (int i = 1; i <= 3; i++) {
            jpeg.put(0xFF, 0xDA, 0, 8, 1, i, 0, 0, 63, 0).put(0);
        }
        return jpeg.put(0xFF, 0xD9).made();
    }

    private static byte[] baseline(int width, int height, int channels) {
        return new Bytes()
                .put(open(0xC0, width, height, channels, 0x11))
                .put(scan(channels, 0, 63))
                .put(0, 0, 0, 0)
                .put(0xFF, 0xD9)
                .made();
    }

    private static byte[] frame(int kind, int width, int height, int channels, int sampling, int scans) {
        Bytes jpeg = new Bytes().put(open(kind, width, height, channels, sampling));
        for (int i = 0; i < scans; i++) {
            jpeg.put(scan(Math.min(4, channels), 0, 63)).put(0, 0);
        }
        return jpeg.put(0xFF, 0xD9).made();
    }

    private static byte[] twoFrames() {
        byte[] small = open(0xC0, 10, 10, 3, 0x11);
        byte[] large = open(0xC2, 14_000, 14_000, 3, 0x11);
        return new Bytes()
                .put(small)
                .put(java.util.Arrays.copyOfRange(large, 2, large.length))
                .put(scan(3, 0, 63))
                .put(0, 0)
                .put(0xFF, 0xD9)
                .made();
    }

    /** Start, a table of ones, the frame, and two tables of codes with one symbol each. */
    private static byte[] open(int kind, int width, int height, int channels, int sampling) {
        Bytes jpeg = new Bytes().put(0xFF, 0xD8);
        jpeg.put(0xFF, 0xDB).big16(67).put(0).put(Bytes.same(1, 64));
        jpeg.put(0xFF, kind)
                .big16(8 + 3 * channels)
                .put(8)
                .big16(height)
                .big16(width)
                .put(channels);
        for (int i = 1; i <= channels; i++) {
            jpeg.put(i, i == 1 ? sampling : Math.min(sampling, 0x11), 0);
        }
        for (int table : new int[] {0x00, 0x10}) {
            jpeg.put(0xFF, 0xC4).big16(20).put(table, 1).put(Bytes.same(0, 15)).put(0);
        }
        return jpeg.made();
    }

    private static byte[] scan(int channels, int from, int to) {
        Bytes scan = new Bytes().put(0xFF, 0xDA).big16(6 + 2 * channels).put(channels);
        for (int i = 1; i <= channels; i++) {
            scan.put(i, 0);
        }
        return scan.put(from, to, 0).made();
    }

    /** A directory whose follower is itself, with entries that claim four thousand million values. */
    private static byte[] exifLoop() {
        Bytes exif = new Bytes().text("Exif\0\0MM").put(0, 42).big32(8).big16(3);
        exif.big16(0x8769).big16(4).big32(1).big32(8);
        exif.big16(0x010E).big16(2).big32(0xFFFFFFFFL).big32(8);
        exif.big16(0x0112).big16(3).big32(0x7FFFFFFF).big32(6);
        return exif.big32(8).made();
    }

    private static byte[] noise(int length, long seed) {
        byte[] noise = new byte[length];
        new Random(seed).nextBytes(noise);
        return noise;
    }

    /** A profile (ICC.1) whose table claims 255 points in each of 15 directions. */
    private static byte[] hugeTable() {
        Bytes profile = new Bytes();
        profile.big32(60_000)
                .text("abcd")
                .big32(0x04300000)
                .text("prtrRGB Lab ")
                .put(Bytes.same(0, 12))
                .text("acsp");
        profile.put(Bytes.same(0, 128 - profile.size()))
                .big32(1)
                .text("A2B0")
                .big32(144)
                .big32(59_000);
        profile.text("mft2").big32(0).put(15, 15, 255, 0).put(Bytes.same(1, 59_000));
        return java.util.Arrays.copyOf(profile.made(), 60_000);
    }
}
