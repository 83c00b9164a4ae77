package puzzleworkshop.support.hostile;

import java.util.LinkedHashMap;
import java.util.Map;
import puzzleworkshop.artwork.SamplePictures;

/** All pictures that somebody might send to do harm, by name. */
public final class HostilePictures {

    private HostilePictures() {}

    public static Map<String, byte[]> all(long seed) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        HostileJpegs.addTo(files, seed);
        HostilePngs.addTo(files, seed);
        HostileTiffs.addTo(files, seed);
        HostilePdfs.addTo(files, seed);
        addPolyglots(files, seed);
        return files;
    }

    private static void addPolyglots(Map<String, byte[]> files, long seed) {
        byte[] jpeg = SamplePictures.encode(SamplePictures.leaves(200, 100, seed), "jpg");
        byte[] gif = SamplePictures.encode(SamplePictures.leaves(200, 100, seed), "gif");
        byte[] bmp = SamplePictures.encode(SamplePictures.leaves(200, 100, seed), "bmp");
        files.put("gif-called.jpg", gif);
        files.put("bmp-called.png", bmp);
        files.put("empty.jpg", new byte[0]);
        files.put("one-byte.jpg", new byte[] {(byte) 0xFF});
        files.put("three-bytes.jpg", new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF});
        files.put("jpeg-then-pdf.jpg", new Bytes().put(jpeg).text("%PDF-1.7\n").made());
        files.put("pdf-then-jpeg.pdf", new Bytes().text("%PDF-1.7\n").put(jpeg).made());
        files.put(
                "zip-then-jpeg.jpg",
                new Bytes().text("PK\u0003\u0004").put(jpeg).made());
        files.put(
                "html.jpg",
                new Bytes().text("<html><script>alert(1)</script></html>").made());
        files.put(
                "svg.png",
                new Bytes()
                        .text("<svg xmlns='http://www.w3.org/2000/svg'><use href='#a'/></svg>")
                        .made());
        files.put("gif-with-pdf-head.jpg", new Bytes().put(gif).text("%PDF-1.4").made());
        files.put(
                "bmp-of-4-gigabytes.bmp",
                new Bytes().text("BM").little32(0xFFFFFFFFL).put(new byte[100]).made());
    }
}
