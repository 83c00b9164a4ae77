package puzzleworkshop.artwork.reading;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;
import puzzleworkshop.artwork.reading.ColourFacts.Model;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/** The chunks of a PNG (ISO/IEC 15948): size, colours, transparency, profile, Exif, and whether its end is there. */
public final class PngHead {

    private static final int MOST_CHUNKS = 100_000;
    private static final int MOST_PROFILE_BYTES = 8 << 20;
    private static final int IHDR = 0x49484452;
    private static final int IDAT = 0x49444154;
    private static final int IEND = 0x49454E44;
    private static final int TRNS = 0x74524E53;
    private static final int ICCP = 0x69434350;
    private static final int EXIF = 0x65584966;

    private PngHead() {}

    public static ImageHeader read(RandomAccessFile in) throws IOException {
        in.seek(8);
        int width = 0;
        int height = 0;
        int bits = 8;
        int kind = 2;
        int orientation = 1;
        boolean alpha = false;
        boolean pixels = false;
        Optional<byte[]> icc = Optional.empty();
        for (int i = 0; i < MOST_CHUNKS; i++) {
            long length = in.readInt() & 0xFFFFFFFFL;
            int type = in.readInt();
            long end = in.getFilePointer() + length + 4;
            if (end > in.length()) {
                throw new Refused("artwork.refused.cut-short");
            }
            switch (type) {
                case IHDR -> {
                    width = in.readInt();
                    height = in.readInt();
                    bits = in.readUnsignedByte();
                    kind = in.readUnsignedByte();
                    alpha = kind == 4 || kind == 6;
                }
                case IDAT -> pixels = true;
                case TRNS -> alpha = true;
                case ICCP -> icc = profile(body(in, length));
                case EXIF -> orientation = Exif.orientation(body(in, length));
                default -> {}
            }
            in.seek(end);
            if (type == IEND) {
                if (!pixels || width < 1 || height < 1) {
                    throw new Refused("artwork.refused.damaged");
                }
                return facts(width, height, bits, kind, alpha, icc, orientation);
            }
        }
        throw new Refused("artwork.refused.damaged");
    }

    private static ImageHeader facts(
            int width, int height, int bits, int kind, boolean alpha, Optional<byte[]> icc, int orientation) {
        List<Sentence> notices = new ArrayList<>();
        if (alpha) {
            notices.add(Sentence.of("artwork.notice.alpha"));
        }
        Model model = kind == 0 || kind == 4 ? Model.GREY : Model.RGB;
        ColourFacts colours = new ColourFacts(model, bits, alpha, icc.flatMap(Profiles::name));
        return new ImageHeader(PictureFormat.PNG, width, height, orientation, colours, icc, Optional.empty(), notices);
    }

    private static byte[] body(RandomAccessFile in, long length) throws IOException {
        if (length > MOST_PROFILE_BYTES) {
            return new byte[0];
        }
        byte[] body = new byte[(int) length];
        in.readFully(body);
        return body;
    }

    /** Name, zero, method, then deflated bytes; unpacked up to a bound, since a few kilobytes can hold gigabytes. */
    private static Optional<byte[]> profile(byte[] chunk) {
        int zero = 0;
        while (zero < chunk.length && chunk[zero] != 0) {
            zero++;
        }
        if (zero + 2 >= chunk.length) {
            return Optional.empty();
        }
        Inflater inflater = new Inflater();
        try {
            inflater.setInput(chunk, zero + 2, chunk.length - zero - 2);
            byte[] out = new byte[MOST_PROFILE_BYTES];
            int length = 0;
            while (!inflater.finished() && length < out.length) {
                int got = inflater.inflate(out, length, out.length - length);
                if (got == 0) {
                    break;
                }
                length += got;
            }
            return inflater.finished() ? Optional.of(Arrays.copyOf(out, length)) : Optional.empty();
        } catch (DataFormatException broken) {
            return Optional.empty();
        } finally {
            inflater.end();
        }
    }
}
