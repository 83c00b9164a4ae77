package puzzleworkshop.artwork.reading;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.artwork.reading.ColourFacts.Model;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/** The chunks of a WebP (RFC 9649): size, alpha, profile, Exif. */
public final class WebpHead {

    /** Its decoder holds the whole picture several times over; phones and web pages stay far below this. */
    private static final long MOST_PIXELS = 30_000_000;

    private static final int MOST_CHUNKS = 1_000;
    private static final int MOST_PROFILE_BYTES = 8 << 20;

    private WebpHead() {}

    public static ImageHeader read(RandomAccessFile in) throws IOException {
        in.seek(4);
        long end = Math.min(in.length(), 8 + little(in, 4));
        if (8 + Integer.toUnsignedLong(lastSize(in)) > in.length() + 1) {
            throw new Refused("artwork.refused.cut-short");
        }
        in.seek(12);
        int width = 0;
        int height = 0;
        int orientation = 1;
        boolean alpha = false;
        Optional<byte[]> icc = Optional.empty();
        for (int i = 0; i < MOST_CHUNKS && in.getFilePointer() + 8 <= end; i++) {
            int type = in.readInt();
            long length = little(in, 4);
            long next = in.getFilePointer() + length + (length & 1);
            switch (type) {
                case 0x56503858 -> { // VP8X
                    int flags = (int) little(in, 4) & 0xFF;
                    if ((flags & 0x02) != 0) {
                        throw new Refused("artwork.refused.animated");
                    }
                    alpha |= (flags & 0x10) != 0;
                    width = 1 + (int) little(in, 3);
                    height = 1 + (int) little(in, 3);
                }
                case 0x56503820 -> { // VP8, lossy
                    in.skipBytes(6);
                    int w = (int) little(in, 2) & 0x3FFF;
                    int h = (int) little(in, 2) & 0x3FFF;
                    width = width == 0 ? w : width;
                    height = height == 0 ? h : height;
                }
                case 0x5650384C -> { // VP8L, lossless
                    in.skipBytes(1);
                    int packed = (int) little(in, 4);
                    width = width == 0 ? 1 + (packed & 0x3FFF) : width;
                    height = height == 0 ? 1 + (packed >>> 14 & 0x3FFF) : height;
                    alpha |= (packed >>> 28 & 1) != 0;
                }
                case 0x49434350 -> icc = Optional.of(body(in, length)); // ICCP
                case 0x45584946 -> orientation = Exif.orientation(body(in, length)); // EXIF
                default -> {}
            }
            in.seek(next);
        }
        if ((long) width * height > MOST_PIXELS) {
            throw new Refused("artwork.refused.webp-too-large", width, height, MOST_PIXELS / 1_000_000);
        }
        List<Sentence> notices = new ArrayList<>();
        if (alpha) {
            notices.add(Sentence.of("artwork.notice.alpha"));
        }
        ColourFacts colours = new ColourFacts(Model.RGB, 8, alpha, icc.flatMap(Profiles::name));
        return new ImageHeader(PictureFormat.WEBP, width, height, orientation, colours, icc, Optional.empty(), notices);
    }

    private static int lastSize(RandomAccessFile in) throws IOException {
        in.seek(4);
        return (int) little(in, 4);
    }

    private static byte[] body(RandomAccessFile in, long length) throws IOException {
        if (length > MOST_PROFILE_BYTES) {
            return new byte[0];
        }
        byte[] body = new byte[(int) length];
        in.readFully(body);
        return body;
    }

    private static long little(RandomAccessFile in, int bytes) throws IOException {
        long value = 0;
        for (int i = 0; i < bytes; i++) {
            value |= (long) in.readUnsignedByte() << 8 * i;
        }
        return value;
    }
}
