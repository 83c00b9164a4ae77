package puzzleworkshop.support.hostile;

import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Random;
import puzzleworkshop.artwork.SamplePictures;

/** PNGs (ISO/IEC 15948) that ask for more than they hold. */
final class HostilePngs {

    private HostilePngs() {}

    static void addTo(Map<String, byte[]> files, long seed) {
        files.put("side-2147483647.png", png(0x7FFFFFFF, 0x7FFFFFFF, 8, 2, 0, Bytes.deflatedZeros(1000)));
        files.put("negative.png", png(-1, -1, 8, 2, 0, Bytes.deflatedZeros(1000)));
        files.put("zeros-200-megapixels.png", png(14_000, 14_200, 8, 2, 0, Bytes.deflatedZeros(14_200L * 42_001)));
        files.put("zeros-see-through.png", png(10_000, 10_000, 8, 6, 0, Bytes.deflatedZeros(10_000L * 40_001)));
        files.put("zeros-interlaced.png", png(12_000, 12_000, 8, 2, 1, Bytes.deflatedZeros(12_000L * 36_100)));
        files.put("zeros-16-bits.png", png(12_000, 12_000, 16, 6, 0, Bytes.deflatedZeros(12_000L * 96_001)));
        files.put("zeros-16-bits-interlaced.png", png(9_000, 9_000, 16, 6, 1, Bytes.deflatedZeros(9_000L * 72_100)));
        files.put("one-bit-200-megapixels.png", png(14_000, 14_200, 1, 0, 0, Bytes.deflatedZeros(14_200L * 1_751)));
        files.put("pixels-missing.png", png(14_000, 14_000, 8, 2, 0, Bytes.deflatedZeros(1000)));
        files.put("pixels-too-many.png", png(10, 10, 8, 2, 0, Bytes.deflatedZeros(500_000_000)));
        files.put("bits-77.png", png(100, 100, 77, 2, 0, Bytes.deflatedZeros(100_000)));
        files.put("kind-9.png", png(100, 100, 8, 9, 0, Bytes.deflatedZeros(100_000)));
        files.put("palette-missing.png", png(5_000, 5_000, 8, 3, 0, Bytes.deflatedZeros(5_000L * 5_001)));
        byte[] pixels = Bytes.deflatedZeros(100 * 301);
        byte[] bomb = Bytes.deflatedZeros(1_000_000_000);
        files.put(
                "text-bomb.png",
                new Bytes()
                        .put(head(100, 100, 8, 2, 0))
                        .put(chunk(
                                "zTXt",
                                new Bytes().text("Comment\0\0").put(bomb).made()))
                        .put(end(pixels))
                        .made());
        files.put(
                "text-bomb-palette.png",
                new Bytes()
                        .put(head(100, 100, 8, 3, 0))
                        .put(chunk("PLTE", new byte[768]))
                        .put(chunk(
                                "iTXt",
                                new Bytes()
                                        .text("Comment\0")
                                        .put(1, 0, 0, 0)
                                        .put(bomb)
                                        .made()))
                        .put(chunk(
                                "zTXt",
                                new Bytes().text("Comment\0\0").put(bomb).made()))
                        .put(end(Bytes.deflatedZeros(100 * 101)))
                        .made());
        files.put(
                "profile-bomb.png",
                new Bytes()
                        .put(head(100, 100, 8, 2, 0))
                        .put(chunk("iCCP", new Bytes().text("x\0\0").put(bomb).made()))
                        .put(end(pixels))
                        .made());
        Bytes empty = new Bytes().put(head(100, 100, 8, 2, 0));
        for (int i = 0; i < 90_000; i++) {
            empty.put(chunk("IDAT", new byte[0]));
        }
        files.put("empty-pixel-chunks-90000.png", empty.put(end(pixels)).made());
        Bytes many = new Bytes().put(head(100, 100, 8, 2, 0));
        for (int i = 0; i < 300_000; i++) {
            many.put(chunk("tEXt", new byte[] {'a', 0}));
        }
        files.put("texts-300000.png", many.put(end(pixels)).made());
        files.put(
                "chunk-longer-than-file.png",
                new Bytes()
                        .put(head(100, 100, 8, 2, 0))
                        .big32(0xFFFFFFF0L)
                        .text("IDAT")
                        .put(pixels)
                        .made());
        files.put(
                "html-and-png.png",
                new Bytes()
                        .put(png(100, 100, 8, 2, 0, pixels))
                        .text("<html><script>alert(1)</script>")
                        .made());
        byte[] good = SamplePictures.encode(SamplePictures.leaves(300, 200, seed), "png");
        byte[] see = SamplePictures.encode(new BufferedImage(60, 40, BufferedImage.TYPE_INT_ARGB), "png");
        Random random = new Random(seed);
        for (int i = 0; i < 10; i++) {
            files.put("flipped-" + i + ".png", Bytes.flipped(i % 3 == 0 ? see : good, random, 1 + random.nextInt(20)));
        }
        for (int i = 1; i < 5; i++) {
            files.put("cut-" + i + ".png", Bytes.cut(good, i / 5.0));
        }
    }

    private static byte[] png(int width, int height, int bits, int kind, int interlace, byte[] pixels) {
        return new Bytes()
                .put(head(width, height, bits, kind, interlace))
                .put(end(pixels))
                .made();
    }

    private static byte[] head(int width, int height, int bits, int kind, int interlace) {
        byte[] head = new Bytes()
                .big32(width)
                .big32(height)
                .put(bits, kind, 0, 0, interlace)
                .made();
        return new Bytes()
                .put(0x89)
                .text("PNG\r\n")
                .put(0x1A, '\n')
                .put(chunk("IHDR", head))
                .made();
    }

    private static byte[] end(byte[] pixels) {
        return new Bytes()
                .put(chunk("IDAT", pixels))
                .put(chunk("IEND", new byte[0]))
                .made();
    }

    static byte[] chunk(String type, byte[] body) {
        byte[] counted = new Bytes()
                .put(type.getBytes(StandardCharsets.ISO_8859_1))
                .put(body)
                .made();
        return new Bytes()
                .big32(body.length)
                .put(counted)
                .big32(Bytes.crc(counted))
                .made();
    }
}
