package puzzleworkshop.proofs;

import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.pixels.MarkedSpot;
import puzzleworkshop.artwork.pixels.PixelSize;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.KeptWhole;

/**
 * A place that a customer marked on the picture.
 *
 * @param along whether its edge is to be cut, so that it becomes a piece; else no line may cut it
 */
public record MarkedPlace(MarkedSpot spot, boolean along) {

    /** Where it lies on the puzzle; it may reach beyond it. */
    public KeptWhole on(Size finished, Crop crop, PixelSize picture) {
        MarkedSpot.InFrame seen = spot.in(crop, picture);
        double width = finished.width().mm();
        return KeptWhole.face(
                Point.of(width * seen.across(), finished.height().mm() * seen.down()),
                Length.mm(2 * width * seen.halfWidth()));
    }
}
