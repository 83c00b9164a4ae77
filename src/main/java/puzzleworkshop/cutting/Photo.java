package puzzleworkshop.cutting;

/**
 * A photo of a cut edge.
 *
 * @param mediaType image/jpeg, image/png or image/webp
 * @param bytes as uploaded, at most 20 MB
 */
public record Photo(String mediaType, byte[] bytes) {

    public static final int MOST_BYTES = 20_000_000;
}
