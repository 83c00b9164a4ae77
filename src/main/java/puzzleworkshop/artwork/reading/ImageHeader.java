package puzzleworkshop.artwork.reading;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.measure.Sentence;

/**
 * What a file's header says, read before any pixel is decoded.
 *
 * @param storedWidth pixels across as stored, before the orientation is applied
 * @param storedHeight pixels down as stored
 * @param orientation EXIF orientation, 1 to 8
 * @param icc the embedded colour profile's bytes, if there is one
 * @param scan for a JPEG what the decoder must know, absent for other formats
 * @param notices what the sender should know
 */
public record ImageHeader(
        PictureFormat format,
        int storedWidth,
        int storedHeight,
        int orientation,
        ColourFacts colours,
        Optional<byte[]> icc,
        Optional<JpegScan> scan,
        List<Sentence> notices) {

    /**
     * @param components 1, 3 or 4
     * @param adobeTransform 0 none, 1 YCbCr, 2 YCCK; -1 where the file has no Adobe segment
     * @param plain grey, or three channels that every reader takes as YCbCr
     * @param several whether the picture comes in several scans: progressive, or channel by channel
     */
    public record JpegScan(int components, int adobeTransform, boolean plain, boolean several) {}

    /** The embedded profile where the colour engine can read it and it is made for so many channels. */
    public Optional<byte[]> usableProfile(int channels) {
        return icc.filter(bytes -> Profiles.parse(bytes)
                .filter(p -> p.getNumComponents() == channels)
                .isPresent());
    }

    /** Orientations 5 to 8 lie on their side. */
    public int uprightWidth() {
        return orientation >= 5 ? storedHeight : storedWidth;
    }

    public int uprightHeight() {
        return orientation >= 5 ? storedWidth : storedHeight;
    }
}
