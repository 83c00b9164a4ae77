package puzzleworkshop.artwork;

import java.util.List;

/**
 * A smaller copy of a picture for screens.
 *
 * @param px which of {@link #SIZES}
 * @param width its own pixels across
 * @param jpeg sRGB, upright, no metadata
 */
public record Rendition(PictureId picture, int px, int width, int height, byte[] jpeg) {

    /** Longer sides in pixels: a list, a card, a whole screen. */
    public static final List<Integer> SIZES = List.of(240, 640, 1600);

    /** The smallest size that is at least so large, or the largest. */
    public static int sizeFor(int px) {
        return SIZES.stream().filter(size -> size >= px).findFirst().orElse(SIZES.getLast());
    }

    /** Where a signed-in browser finds it; the address never changes its content. */
    public static String address(PictureId id, int px) {
        return "pictures/" + id + "/" + sizeFor(px) + ".jpg";
    }
}
