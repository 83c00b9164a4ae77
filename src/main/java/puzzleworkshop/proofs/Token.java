package puzzleworkshop.proofs;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.HexFormat;
import java.util.regex.Pattern;

/**
 * The secret in a customer's link: 256 random bits, written in 43 letters of the URL-safe alphabet (RFC 4648, section 5).
 * Whoever has it may see one order. A link is found by its SHA-256; the token itself is kept while the link is open, so that it
 * can be told again.
 */
public record Token(String text) {

    private static final Pattern FORM = Pattern.compile("[A-Za-z0-9_-]{43}");
    private static final SecureRandom RANDOM = new SecureRandom();

    static Token fresh() {
        byte[] bytes = new byte[32];
        RANDOM.nextBytes(bytes);
        return new Token(Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
    }

    boolean isWellFormed() {
        return FORM.matcher(text).matches();
    }

    String sha256() {
        return sha256(text);
    }

    static String sha256(String text) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Never in a log. */
    @Override
    public String toString() {
        return "Token[…]";
    }
}
