package puzzleworkshop.artwork.pixels;

/** How many pixels a picture has as it is looked at, that is after its EXIF orientation; both at least 1. */
public interface PixelSize {

    int width();

    int height();

    /** Width over height. */
    default double aspect() {
        return (double) width() / height();
    }
}
