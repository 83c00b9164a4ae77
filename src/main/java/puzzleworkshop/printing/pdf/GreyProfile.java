package puzzleworkshop.printing.pdf;

import java.awt.color.ICC_Profile;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/**
 * A profile for grey pictures whose steps are those of sRGB, so that grey and colour prints of one run agree: a
 * monochrome display profile (ICC.1:2010, 8.3.3) with white D50 and the curve of IEC 61966-2-1 as parametric curve of type 3.
 */
public final class GreyProfile {

    private static final int HEAD = 128;

    private GreyProfile() {}

    public static ICC_Profile make() {
        byte[] name = text("Grey in steps of sRGB");
        byte[] rights = text("None reserved");
        byte[] white = ByteBuffer.allocate(20)
                .putInt(tag("XYZ "))
                .putInt(0)
                .putInt(fixed(0.9642))
                .putInt(fixed(1))
                .putInt(fixed(0.8249))
                .array();
        byte[] curve = ByteBuffer.allocate(32)
                .putInt(tag("para"))
                .putInt(0)
                .putShort((short) 3)
                .putShort((short) 0)
                .putInt(fixed(2.4))
                .putInt(fixed(1 / 1.055))
                .putInt(fixed(0.055 / 1.055))
                .putInt(fixed(1 / 12.92))
                .putInt(fixed(0.04045))
                .array();
        String[] tags = {"desc", "cprt", "wtpt", "kTRC"};
        byte[][] parts = {name, rights, white, curve};
        int at = HEAD + 4 + 12 * tags.length;
        int length = at;
        for (byte[] part : parts) {
            length += part.length;
        }
        ByteBuffer all = ByteBuffer.allocate(length);
        all.putInt(length)
                .putInt(0)
                .putInt(0x04200000)
                .putInt(tag("mntr"))
                .putInt(tag("GRAY"))
                .putInt(tag("XYZ "));
        all.putShort((short) 2026)
                .putShort((short) 1)
                .putShort((short) 1)
                .putShort((short) 0)
                .putShort((short) 0)
                .putShort((short) 0);
        all.putInt(tag("acsp"));
        all.position(68).putInt(fixed(0.9642)).putInt(fixed(1)).putInt(fixed(0.8249));
        all.position(HEAD).putInt(tags.length);
        for (int i = 0; i < tags.length; i++) {
            all.putInt(tag(tags[i])).putInt(at).putInt(parts[i].length);
            at += parts[i].length;
        }
        for (byte[] part : parts) {
            all.put(part);
        }
        return ICC_Profile.getInstance(all.array());
    }

    /** One text in one language, filled up to whole words of four bytes (ICC.1:2010, 10.13). */
    private static byte[] text(String words) {
        byte[] letters = words.getBytes(StandardCharsets.UTF_16BE);
        int length = (28 + letters.length + 3) / 4 * 4;
        return ByteBuffer.allocate(length)
                .putInt(tag("mluc"))
                .putInt(0)
                .putInt(1)
                .putInt(12)
                .putShort((short) 0x656E)
                .putShort((short) 0x5553)
                .putInt(letters.length)
                .putInt(28)
                .put(letters)
                .array();
    }

    private static int tag(String name) {
        return ByteBuffer.wrap(name.getBytes(StandardCharsets.US_ASCII)).getInt();
    }

    /** Fixed point with 16 bits after the point. */
    private static int fixed(double value) {
        return (int) Math.round(value * 65536);
    }
}
