package puzzleworkshop.artwork;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.artwork.pixels.PixelSize;
import puzzleworkshop.artwork.reading.ColourFacts;
import puzzleworkshop.artwork.reading.PictureFormat;
import puzzleworkshop.measure.Sentence;

/**
 * A picture that was taken in. It never changes: a better file is another picture.
 *
 * @param fileName as the sender called it, shown only
 * @param width pixels across as the picture is looked at, that is after its EXIF orientation
 * @param height pixels down as the picture is looked at
 * @param orientation the EXIF orientation of the stored pixels, 1 to 8 (CIPA DC-008, tag 274)
 * @param sha256 of the original file, 64 lower-case hexadecimal digits
 * @param bytes length of the original file
 * @param look what was measured of its focus and light; absent when it could not be measured
 * @param notices what the sender should know: see-through parts made white, further pages left out…
 */
public record Picture(
        PictureId id,
        String fileName,
        PictureFormat format,
        int width,
        int height,
        int orientation,
        String sha256,
        long bytes,
        ColourFacts colours,
        Optional<PictureLook> look,
        List<Sentence> notices,
        Instant receivedAt)
        implements PixelSize {

    public Picture {
        if (width < 1 || height < 1) {
            throw new IllegalArgumentException("A picture has pixels, not " + width + " × " + height);
        }
        notices = List.copyOf(notices);
    }

    public double megapixels() {
        return (double) width * height / 1e6;
    }
}
