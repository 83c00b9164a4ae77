package puzzleworkshop.cutting.settings;

import java.nio.charset.StandardCharsets;
import java.util.Optional;

/**
 * A photo of a cut edge.
 *
 * @param mediaType image/jpeg, image/png or image/webp, by what the file begins with
 * @param bytes as uploaded, at most 20 MB
 */
public record TrialPhoto(String mediaType, byte[] bytes) {

    public static final int MOST_BYTES = 20_000_000;

    /** The photo in these bytes, told by their beginning, never by what a browser says; none when it is no picture. */
    public static Optional<TrialPhoto> of(byte[] bytes) {
        return typeOf(bytes).map(type -> new TrialPhoto(type, bytes));
    }

    private static Optional<String> typeOf(byte[] bytes) {
        String start = new String(bytes, 0, Math.min(12, bytes.length), StandardCharsets.ISO_8859_1);
        if (start.startsWith("\u00ff\u00d8\u00ff")) {
            return Optional.of("image/jpeg");
        }
        if (start.startsWith("\u0089PNG\r\n")) {
            return Optional.of("image/png");
        }
        if (start.startsWith("RIFF") && start.endsWith("WEBP")) {
            return Optional.of("image/webp");
        }
        return Optional.empty();
    }
}
