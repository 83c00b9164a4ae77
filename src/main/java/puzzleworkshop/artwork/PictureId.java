package puzzleworkshop.artwork;

import java.util.UUID;

/** Which picture. Made once when a file is taken in; never reused. */
public record PictureId(UUID value) {

    public static PictureId parse(String text) {
        return new PictureId(UUID.fromString(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
