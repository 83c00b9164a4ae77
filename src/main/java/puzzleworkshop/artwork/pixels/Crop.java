package puzzleworkshop.artwork.pixels;

import java.util.Objects;
import java.util.regex.Pattern;

/**
 * Which part of a picture becomes the puzzle. The frame is exactly the finished puzzle, without overhang; it is given in
 * fractions of the picture as it is looked at: upright after its EXIF orientation, then turned by the quarter turns. With
 * {@link Fit#FIT} the frame may reach beyond the picture, and what lies outside is filled with the border colour.
 *
 * @param left left edge of the frame, 0 at the left edge of the turned picture, 1 at its right edge
 * @param top upper edge, 0 at the top of the turned picture
 * @param width of the frame, above 0; 1 is the whole width of the turned picture
 * @param height of the frame, above 0
 * @param quarterTurns clockwise, 0 to 3
 * @param borderColour {@code #rrggbb}, used with {@link Fit#FIT} only
 * @param edge what the overhang shows where the picture ends, used with {@link Fit#FILL} only
 */
public record Crop(
        double left,
        double top,
        double width,
        double height,
        int quarterTurns,
        Fit fit,
        String borderColour,
        Edge edge) {

    /** How the picture meets the finished size. */
    public enum Fit {
        /** The frame lies inside the picture: the puzzle is covered, something of the picture may be cut off. */
        FILL,
        /** The picture lies inside the frame: nothing is cut off, a border in one colour may show. */
        FIT
    }

    /** What the overhang shows beyond the end of the picture. */
    public enum Edge {
        /** The picture, folded back at its edge. */
        MIRRORED,
        /** The last row of pixels, drawn on outwards. */
        EXTENDED
    }

    public static final String WHITE = "#ffffff";

    private static final Pattern COLOUR = Pattern.compile("#[0-9a-f]{6}");
    private static final double ROUNDING = 1e-9;
    /** A frame wider than this many pictures is a slip, not a wish; it also bounds the arithmetic. */
    private static final double WIDEST = 20;

    public Crop {
        Objects.requireNonNull(fit);
        Objects.requireNonNull(edge);
        if (quarterTurns < 0 || quarterTurns > 3) {
            throw new IllegalArgumentException("Quarter turns are 0 to 3, not " + quarterTurns);
        }
        if (!COLOUR.matcher(borderColour).matches()) {
            throw new IllegalArgumentException("A border colour is written #rrggbb, not " + borderColour);
        }
        boolean finite =
                Double.isFinite(left) && Double.isFinite(top) && Double.isFinite(width) && Double.isFinite(height);
        if (!finite
                || width < 1e-4
                || height < 1e-4
                || width > WIDEST
                || height > WIDEST
                || Math.abs(left) > WIDEST
                || Math.abs(top) > WIDEST) {
            throw new IllegalArgumentException(
                    "Not a frame: left " + left + ", top " + top + ", width " + width + ", height " + height);
        }
        if (fit == Fit.FILL) {
            if (left < -ROUNDING || top < -ROUNDING || left + width > 1 + ROUNDING || top + height > 1 + ROUNDING) {
                throw new IllegalArgumentException("A frame that is filled lies inside the picture");
            }
            width = Math.min(width, 1);
            height = Math.min(height, 1);
            left = Math.clamp(left, 0, 1 - width);
            top = Math.clamp(top, 0, 1 - height);
        }
    }

    /** The largest frame of an aspect (width over height) inside the picture, in its middle. */
    public static Crop filling(PixelSize picture, double aspect) {
        return filling(picture, aspect, 0);
    }

    /** The same after turning the picture clockwise. */
    public static Crop filling(PixelSize picture, double aspect, int quarterTurns) {
        double relative = relative(picture, aspect, quarterTurns);
        double width = Math.min(1, relative);
        double height = Math.min(1, 1 / relative);
        return new Crop((1 - width) / 2, (1 - height) / 2, width, height, quarterTurns, Fit.FILL, WHITE, Edge.MIRRORED);
    }

    /** The smallest frame of an aspect around the whole picture. */
    public static Crop fitting(PixelSize picture, double aspect, int quarterTurns, String borderColour) {
        double relative = relative(picture, aspect, quarterTurns);
        double width = Math.max(1, relative);
        double height = Math.max(1, 1 / relative);
        return new Crop(
                (1 - width) / 2, (1 - height) / 2, width, height, quarterTurns, Fit.FIT, borderColour, Edge.MIRRORED);
    }

    /**
     * The same crop for another finished aspect: same middle and, as far as the picture allows, the same area.
     */
    public Crop matched(PixelSize picture, double aspect) {
        double relative = relative(picture, aspect, quarterTurns);
        double area = width * height;
        double newWidth = Math.sqrt(area * relative);
        double newHeight = newWidth / relative;
        if (fit == Fit.FILL) {
            double shrink = Math.min(1, Math.min(1 / newWidth, 1 / newHeight));
            newWidth *= shrink;
            newHeight *= shrink;
        }
        double newLeft = left + (width - newWidth) / 2;
        double newTop = top + (height - newHeight) / 2;
        if (fit == Fit.FILL) {
            newLeft = Math.clamp(newLeft, 0, Math.max(0, 1 - newWidth));
            newTop = Math.clamp(newTop, 0, Math.max(0, 1 - newHeight));
        }
        return new Crop(newLeft, newTop, newWidth, newHeight, quarterTurns, fit, borderColour, edge);
    }

    /** Whether the frame has an aspect, to half a hundredth (a pixel more or less on small pictures). */
    public boolean hasAspect(PixelSize picture, double aspect) {
        double own = width * turnedWidth(picture) / (height * turnedHeight(picture));
        return Math.abs(own / aspect - 1) < 0.005;
    }

    /** Pixels across of the picture after the quarter turns. */
    public int turnedWidth(PixelSize picture) {
        return quarterTurns % 2 == 0 ? picture.width() : picture.height();
    }

    public int turnedHeight(PixelSize picture) {
        return quarterTurns % 2 == 0 ? picture.height() : picture.width();
    }

    /** The border colour as 0xRRGGBB. */
    public int borderRgb() {
        return Integer.parseInt(borderColour.substring(1), 16);
    }

    private static double relative(PixelSize picture, double aspect, int quarterTurns) {
        if (!(aspect > 0) || !Double.isFinite(aspect)) {
            throw new IllegalArgumentException("An aspect is above zero, not " + aspect);
        }
        double own = quarterTurns % 2 == 0 ? picture.aspect() : 1 / picture.aspect();
        return aspect / own;
    }
}
