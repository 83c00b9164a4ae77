package puzzleworkshop.orders.preview;

import org.springframework.stereotype.Component;
import puzzleworkshop.artwork.CroppedPictures;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.FramedPicture;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.shapes.PictureContour;
import puzzleworkshop.runtime.VersionedCache;

/** The edges that a framed picture has around marked places; found once for each place, picture, crop and size and kept for a while. */
@Component
public class PictureEdges {

    /** About two pixels for each millimetre of a large puzzle: finer than a beam follows a hand's mark. */
    private static final int PIXELS = 900;

    private static final long KEPT = 500;

    private record Asked(KeptWhole place, FramedPicture framed, Size finished) {}

    private final CroppedPictures pictures;
    private final VersionedCache<Asked, PictureContour> found =
            VersionedCache.<Asked, PictureContour>ofWeight(KEPT, contour -> 1).restingOnTheQuestion();

    PictureEdges(CroppedPictures pictures) {
        this.pictures = pictures;
    }

    /** The picture's own edge around a place; the place's oval where it shows hardly one. */
    public PictureContour around(KeptWhole place, FramedPicture framed, Size finished) {
        return found.get(
                new Asked(place, framed, finished),
                () -> PictureContour.around(
                        place, pictures.face(framed.picture(), framed.crop(), finished, PIXELS), finished));
    }
}
