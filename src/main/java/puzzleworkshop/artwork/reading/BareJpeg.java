package puzzleworkshop.artwork.reading;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Copies a JPEG bit for bit without anything that is no picture: Exif with its place and camera, previews, remarks and
 * what cameras hang behind the end. Tables, frame and scans stay as they are (ITU-T T.81, annex B), of the application
 * segments only Adobe's, which says how the colours are stored. The colour profile is kept by whoever lays the picture.
 */
public final class BareJpeg {

    private static final int ADOBE = 0xEE;

    private final InputStream in;
    private final OutputStream out;
    private int scans;

    private BareJpeg(InputStream in, OutputStream out) {
        this.in = in;
        this.out = out;
    }

    /** @return whether it could be followed from its start to its end; if not, the target is of no use */
    public static boolean copy(Path jpeg, Path target) throws IOException {
        try (InputStream in = new BufferedInputStream(Files.newInputStream(jpeg), 1 << 16);
                OutputStream out = new BufferedOutputStream(Files.newOutputStream(target), 1 << 16)) {
            return new BareJpeg(in, out).copy();
        } catch (EOFException cutShort) {
            return false;
        }
    }

    /** How many scans there are up to the end, or to where the file breaks off. */
    public static int scans(Path jpeg) throws IOException {
        try (InputStream in = new BufferedInputStream(Files.newInputStream(jpeg), 1 << 16)) {
            BareJpeg counted = new BareJpeg(in, OutputStream.nullOutputStream());
            try {
                counted.copy();
            } catch (EOFException cutShort) {
                // the decoder goes as far too
            }
            return counted.scans;
        }
    }

    private boolean copy() throws IOException {
        if (next() != 0xFF || next() != 0xD8) {
            return false;
        }
        put(0xD8);
        int marker = marker();
        while (marker != 0xD9) {
            boolean alone = marker == 0x01 || marker >= 0xD0 && marker <= 0xD8;
            if (marker < 0 || alone) {
                return false;
            }
            int length = next() << 8 | next();
            if (length < 2) {
                return false;
            }
            byte[] body = in.readNBytes(length - 2);
            if (body.length < length - 2) {
                return false;
            }
            boolean remark = marker == 0xFE || marker >= 0xE0 && marker <= 0xEF && marker != ADOBE;
            if (!remark) {
                put(marker);
                out.write(length >> 8);
                out.write(length);
                out.write(body);
            }
            if (marker == 0xDA) {
                scans++;
                marker = scan();
            } else {
                marker = marker();
            }
        }
        put(0xD9);
        return scans > 0;
    }

    /** The coded data up to the next marker that is neither a stuffed byte nor a restart. */
    private int scan() throws IOException {
        while (true) {
            int value = next();
            if (value != 0xFF) {
                out.write(value);
                continue;
            }
            int after = next();
            while (after == 0xFF) {
                after = next();
            }
            if (after != 0 && (after < 0xD0 || after > 0xD7)) {
                return after;
            }
            put(after);
        }
    }

    private int marker() throws IOException {
        if (next() != 0xFF) {
            return -1;
        }
        int marker;
        do {
            marker = next();
        } while (marker == 0xFF);
        return marker;
    }

    private void put(int marker) throws IOException {
        out.write(0xFF);
        out.write(marker);
    }

    private int next() throws IOException {
        int value = in.read();
        if (value < 0) {
            throw new EOFException();
        }
        return value;
    }
}
