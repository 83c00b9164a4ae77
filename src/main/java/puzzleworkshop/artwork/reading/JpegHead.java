package puzzleworkshop.artwork.reading;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import puzzleworkshop.artwork.reading.ColourFacts.Model;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/**
 * The marker segments of a JPEG up to its first scan (ITU-T T.81, annex B): frame, Exif, ICC profile (ICC.1, annex B.4),
 * Adobe's colour transform. Also whether the file was cut short: the end-of-image marker must come somewhere.
 */
public final class JpegHead {

    private static final int MOST_SEGMENTS = 2_000;
    private static final int MOST_PROFILE_BYTES = 8 << 20;

    /** Markers may have fill bytes before them (ITU-T T.81, B.1.1.2); nobody writes more than a few. */
    private static final int MOST_FILL_BYTES = 4096;

    /** Coefficients of a picture in several scans are all held until the last: 107 megapixels with halved colour. */
    private static final long MOST_COEFFICIENT_BYTES = 320L << 20;

    private static final byte[] EXIF = "Exif\0\0".getBytes(StandardCharsets.ISO_8859_1);
    private static final byte[] ICC = "ICC_PROFILE\0".getBytes(StandardCharsets.ISO_8859_1);
    private static final byte[] ADOBE = "Adobe".getBytes(StandardCharsets.ISO_8859_1);

    private final RandomAccessFile in;
    private final TreeMap<Integer, byte[]> iccParts = new TreeMap<>();
    private byte[] frame;
    private boolean progressive;
    private int inFirstScan;
    private int orientation = 1;
    private int adobeTransform = -1;
    private int fillBytes;

    private JpegHead(RandomAccessFile in) {
        this.in = in;
    }

    public static ImageHeader read(RandomAccessFile in) throws IOException {
        return new JpegHead(in).read();
    }

    private ImageHeader read() throws IOException {
        in.seek(2);
        for (int i = 0; i < MOST_SEGMENTS; i++) {
            int marker = nextMarker();
            if (marker == 0xDA) {
                in.readUnsignedShort();
                inFirstScan = in.readUnsignedByte();
                return facts();
            }
            if (marker == 0xD9) {
                throw new Refused("artwork.refused.damaged");
            }
            if (marker == 0x01 || (marker >= 0xD0 && marker <= 0xD8)) {
                continue;
            }
            long end = in.getFilePointer() + in.readUnsignedShort();
            segment(marker, (int) (end - in.getFilePointer()));
            in.seek(end);
        }
        throw new Refused("artwork.refused.damaged");
    }

    private int nextMarker() throws IOException {
        if (in.readUnsignedByte() != 0xFF) {
            throw new Refused("artwork.refused.damaged");
        }
        int marker;
        do {
            marker = in.readUnsignedByte();
            if (marker == 0xFF && ++fillBytes > MOST_FILL_BYTES) {
                throw new Refused("artwork.refused.damaged");
            }
        } while (marker == 0xFF);
        return marker;
    }

    private void segment(int marker, int length) throws IOException {
        if (length < 0) {
            throw new Refused("artwork.refused.damaged");
        }
        boolean isFrame = marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
        if (isFrame) {
            if (marker > 0xC2) {
                throw new Refused("artwork.refused.rare-jpeg");
            }
            progressive = marker == 0xC2;
            frame = body(length);
        } else if (marker == 0xE1) {
            byte[] body = body(length);
            // The first that says something counts: programs that add a second one leave the camera's in front.
            if (startsWith(body, EXIF) && orientation == 1) {
                orientation = Exif.orientation(Arrays.copyOfRange(body, EXIF.length, body.length));
            }
        } else if (marker == 0xE2) {
            byte[] body = body(length);
            if (startsWith(body, ICC) && body.length > 14) {
                iccParts.put(body[12] & 0xFF, Arrays.copyOfRange(body, 14, body.length));
            }
        } else if (marker == 0xEE) {
            byte[] body = body(length);
            if (startsWith(body, ADOBE) && body.length >= 12) {
                adobeTransform = body[11] & 0xFF;
            }
        }
    }

    private byte[] body(int length) throws IOException {
        byte[] body = new byte[length];
        in.readFully(body);
        return body;
    }

    private ImageHeader facts() throws IOException {
        if (frame == null || frame.length < 6) {
            throw new Refused("artwork.refused.damaged");
        }
        int bits = frame[0] & 0xFF;
        int height = (frame[1] & 0xFF) << 8 | frame[2] & 0xFF;
        int width = (frame[3] & 0xFF) << 8 | frame[4] & 0xFF;
        int components = frame[5] & 0xFF;
        if (bits != 8 || (components != 1 && components != 3 && components != 4)) {
            throw new Refused("artwork.refused.rare-jpeg");
        }
        boolean several = progressive || inFirstScan < components;
        if (several && coefficientBytes(width, height, components) > MOST_COEFFICIENT_BYTES) {
            throw new Refused("artwork.refused.progressive-too-large", width, height);
        }
        if (!endsAfter(in.getFilePointer())) {
            throw new Refused("artwork.refused.cut-short");
        }
        Model model = components == 1 ? Model.GREY : components == 3 ? Model.RGB : Model.CMYK;
        Optional<byte[]> icc = profile();
        List<Sentence> notices = new ArrayList<>();
        if (model == Model.CMYK) {
            notices.add(Sentence.of(icc.isPresent() ? "artwork.notice.cmyk" : "artwork.notice.cmyk-without-profile"));
        }
        ColourFacts colours = new ColourFacts(model, bits, false, icc.flatMap(Profiles::name));
        return new ImageHeader(
                PictureFormat.JPEG,
                width,
                height,
                orientation,
                colours,
                icc,
                Optional.of(new ImageHeader.JpegScan(components, adobeTransform, isPlain(components), several)),
                notices);
    }

    /** Two bytes for each coefficient of whole blocks of 8 × 8 (ITU-T T.81, A.1.1 and A.2.4). */
    private long coefficientBytes(int width, int height, int components) {
        if (frame.length < 6 + 3 * components) {
            throw new Refused("artwork.refused.damaged");
        }
        int mostAcross = 1;
        int mostDown = 1;
        for (int i = 0; i < components; i++) {
            mostAcross = Math.max(mostAcross, (frame[7 + 3 * i] & 0xFF) >> 4);
            mostDown = Math.max(mostDown, frame[7 + 3 * i] & 15);
        }
        long bytes = 0;
        for (int i = 0; i < components; i++) {
            long across = Math.ceilDiv((long) width * ((frame[7 + 3 * i] & 0xFF) >> 4), 8L * mostAcross);
            long down = Math.ceilDiv((long) height * (frame[7 + 3 * i] & 15), 8L * mostDown);
            bytes += across * down * 128;
        }
        return bytes;
    }

    /** Grey without more ado; colour when Adobe's segment says YCbCr, or nothing does and the channels are numbered as JFIF has it. */
    private boolean isPlain(int components) {
        if (components != 3) {
            return components == 1;
        }
        boolean numbered = frame.length >= 15 && frame[6] == 1 && frame[9] == 2 && frame[12] == 3;
        return adobeTransform == 1 || adobeTransform < 0 && numbered;
    }

    private Optional<byte[]> profile() {
        ByteArrayOutputStream joined = new ByteArrayOutputStream();
        iccParts.values().forEach(joined::writeBytes);
        return joined.size() == 0 || joined.size() > MOST_PROFILE_BYTES
                ? Optional.empty()
                : Optional.of(joined.toByteArray());
    }

    /** Looks for the end marker from the back: cameras may write trailers behind it, but a cut file has none. */
    private boolean endsAfter(long scanStart) throws IOException {
        byte[] block = new byte[64 * 1024];
        long end = in.length();
        while (end > scanStart) {
            long start = Math.max(scanStart, end - block.length);
            int length = (int) (end - start);
            in.seek(start);
            in.readFully(block, 0, length);
            for (int i = length - 2; i >= 0; i--) {
                if (block[i] == (byte) 0xFF && block[i + 1] == (byte) 0xD9) {
                    return true;
                }
            }
            if (start == scanStart) {
                return false;
            }
            end = start + 1;
        }
        return false;
    }

    private static boolean startsWith(byte[] body, byte[] mark) {
        return body.length >= mark.length && Arrays.equals(body, 0, mark.length, mark, 0, mark.length);
    }
}
