package puzzleworkshop.artwork.reading;

import java.awt.color.ICC_Profile;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** ICC profiles as they come in files: readable or not. */
public final class Profiles {

    private Profiles() {}

    /** The profile, or nothing when it is broken: the picture is then taken as sRGB. */
    public static Optional<ICC_Profile> parse(byte[] bytes) {
        try {
            return Optional.of(ICC_Profile.getInstance(bytes));
        } catch (IllegalArgumentException broken) {
            return Optional.empty();
        }
    }

    /** The description inside (tag 'desc'; a text in version 2, a list of texts in version 4 of ICC.1). */
    public static Optional<String> name(byte[] bytes) {
        byte[] desc = parse(bytes)
                .map(p -> p.getData(ICC_Profile.icSigProfileDescriptionTag))
                .orElse(null);
        if (desc == null || desc.length < 13) {
            return Optional.empty();
        }
        String text;
        if (new String(desc, 0, 4, StandardCharsets.ISO_8859_1).equals("mluc") && desc.length >= 28) {
            int length = integer(desc, 20);
            int offset = integer(desc, 24);
            if (length < 0 || offset < 0 || length > 400 || offset + length > desc.length) {
                return Optional.empty();
            }
            text = new String(desc, offset, length, StandardCharsets.UTF_16BE);
        } else {
            int length = integer(desc, 8);
            if (length < 1 || length > 400 || 12 + length > desc.length) {
                return Optional.empty();
            }
            text = new String(desc, 12, length - 1, StandardCharsets.ISO_8859_1);
        }
        String shown = text.replaceAll("\\p{Cntrl}", "").strip();
        return shown.isEmpty() ? Optional.empty() : Optional.of(shown);
    }

    private static int integer(byte[] bytes, int at) {
        return (bytes[at] & 0xFF) << 24
                | (bytes[at + 1] & 0xFF) << 16
                | (bytes[at + 2] & 0xFF) << 8
                | bytes[at + 3] & 0xFF;
    }
}
