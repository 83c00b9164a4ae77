package puzzleworkshop.artwork.pixels;

/**
 * A place of a picture, in shares of the upright picture before quarter turns: whatever becomes of the frame, it stays on what
 * it was put on.
 *
 * @param across middle, 0 at the picture's left edge, 1 at its right edge
 * @param down middle, 0 at its top
 * @param halfWidth as a share of the picture's width, above zero
 */
public record MarkedSpot(double across, double down, double halfWidth) {

    public MarkedSpot {
        boolean finite = Double.isFinite(across) && Double.isFinite(down) && Double.isFinite(halfWidth);
        if (!finite || !(halfWidth > 0)) {
            throw new IllegalArgumentException("No place of a picture: " + across + ", " + down + ", " + halfWidth);
        }
    }

    /** The same place as one sees it in a frame: shares of the frame, from its top left corner; outside it below 0 or above 1. */
    public record InFrame(double across, double down, double halfWidth) {}

    /** A place that was pointed at in a frame. */
    public static MarkedSpot of(InFrame seen, Crop crop, PixelSize picture) {
        double x = crop.left() + seen.across() * crop.width();
        double y = crop.top() + seen.down() * crop.height();
        double half = seen.halfWidth() * crop.width() * crop.turnedWidth(picture) / picture.width();
        return switch (crop.quarterTurns()) {
            case 1 -> new MarkedSpot(y, 1 - x, half);
            case 2 -> new MarkedSpot(1 - x, 1 - y, half);
            case 3 -> new MarkedSpot(1 - y, x, half);
            default -> new MarkedSpot(x, y, half);
        };
    }

    public InFrame in(Crop crop, PixelSize picture) {
        double x = switch (crop.quarterTurns()) {
            case 1 -> 1 - down;
            case 2 -> 1 - across;
            case 3 -> down;
            default -> across;
        };
        double y = switch (crop.quarterTurns()) {
            case 1 -> across;
            case 2 -> 1 - down;
            case 3 -> 1 - across;
            default -> down;
        };
        return new InFrame(
                (x - crop.left()) / crop.width(),
                (y - crop.top()) / crop.height(),
                halfWidth * picture.width() / (crop.width() * crop.turnedWidth(picture)));
    }
}
