package puzzleworkshop.orders.preview;

import java.awt.geom.AffineTransform;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.pixels.MarkedSpot;
import puzzleworkshop.artwork.pixels.PixelSize;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.pattern.KeptWhole;

/**
 * A picture as it lies on a puzzle. When it is framed otherwise, what was marked on it moves, turns and grows with it: a face
 * stays the same face.
 *
 * @param pixels of the whole upright picture
 * @param finished size of the puzzle that the frame becomes
 */
public record LaidPicture(FramedPicture framed, PixelSize pixels, Size finished) {

    public boolean isSamePicture(LaidPicture other) {
        return framed.picture().equals(other.framed.picture());
    }

    /** A place marked while the picture lay like this, as it lies on the same picture laid otherwise. */
    public KeptWhole carried(KeptWhole place, LaidPicture to) {
        double scale = to.mmPerPixel() / mmPerPixel();
        boolean onItsSide = turnsTo(to) % 2 != 0;
        return new KeptWhole(
                carried(place.middle(), to),
                scale * (onItsSide ? place.halfHeightMm() : place.halfWidthMm()),
                scale * (onItsSide ? place.halfWidthMm() : place.halfHeightMm()));
    }

    /** The same as a movement of everything that lies on the puzzle: a shift, quarter turns and one scale. */
    public AffineTransform movement(LaidPicture to) {
        Point origin = carried(Point.of(0, 0), to);
        double scale = to.mmPerPixel() / mmPerPixel();
        AffineTransform move = AffineTransform.getTranslateInstance(origin.xMm(), origin.yMm());
        move.quadrantRotate(turnsTo(to));
        move.scale(scale, scale);
        return move;
    }

    private int turnsTo(LaidPicture to) {
        return Math.floorMod(to.crop().quarterTurns() - crop().quarterTurns(), 4);
    }

    private Point carried(Point place, LaidPicture to) {
        MarkedSpot.InFrame before = new MarkedSpot.InFrame(
                place.xMm() / finished.width().mm(),
                place.yMm() / finished.height().mm(),
                1);
        MarkedSpot.InFrame after = MarkedSpot.of(before, crop(), pixels).in(to.crop(), pixels);
        return Point.of(
                after.across() * to.finished.width().mm(),
                after.down() * to.finished.height().mm());
    }

    private double mmPerPixel() {
        return finished.width().mm() / (crop().width() * crop().turnedWidth(pixels));
    }

    private Crop crop() {
        return framed.crop();
    }
}
