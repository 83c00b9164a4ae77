package puzzleworkshop.artwork;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.springframework.stereotype.Service;
import puzzleworkshop.artwork.reading.Facts;
import puzzleworkshop.artwork.reading.FirstLook;
import puzzleworkshop.artwork.reading.Frame;
import puzzleworkshop.artwork.reading.Framing;
import puzzleworkshop.artwork.reading.Survey;
import puzzleworkshop.artwork.reading.UnpackedPixels;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/** Draws a picture as it is cropped: turned, with border, with overhang; small for screens and papers, full for print. */
@Service
public class CroppedPictures {

    private static final float PRINT_QUALITY = 0.95f;
    private static final float PROOF_QUALITY = 0.88f;
    private static final int MOST_PROOF_PIXELS = 4000;

    private final Pictures pictures;
    private final ReadingPlaces places;

    CroppedPictures(Pictures pictures, ReadingPlaces places) {
        this.pictures = pictures;
        this.places = places;
    }

    /**
     * The print of a crop at full resolution. Never enlarged: its resolution is the picture's own, at most {@code mostPpi}.
     * Works in strips: the heap holds the finished JPEG and some rows, however large the picture is.
     *
     * @param finished the puzzle without overhang
     * @param overhang print beyond the outer cut on every side
     * @param mostPpi pixels per inch, 300 as a rule
     */
    public PrintPicture print(PictureId id, Crop crop, Size finished, Length overhang, double mostPpi) {
        Picture picture = pictures.get(id);
        double own = Resolution.judge(picture, crop, finished, overhang, PrintLimits.USUAL).ppi();
        double ppi = Math.min(own, mostPpi);
        int width = pixels(finished.width(), ppi);
        int height = pixels(finished.height(), ppi);
        int beyond = (int) Math.ceil(overhang.toInches() * ppi - 1e-9);
        return places.with(() -> unpacked(id, pixels -> {
            Framing framing = Framing.of(pixels, crop, width, height, beyond);
            double drawn = width / finished.width().toInches();
            Size printed = finished.grownBy(Length.inches(beyond / drawn));
            return new PrintPicture(framing.width(), framing.height(), printed, drawn, framing.jpeg(drawn, PRINT_QUALITY));
        }));
    }

    /**
     * A picture of the crop for screens and papers.
     *
     * @param overhang zero for the finished puzzle alone
     * @param longerSide pixels wanted along the longer side of the finished puzzle, at most 4,000; never enlarged
     * @return JPEG
     */
    public byte[] proof(PictureId id, Crop crop, Size finished, Length overhang, int longerSide) {
        Picture picture = pictures.get(id);
        double framedAcross = crop.width() * crop.turnedWidth(picture);
        double framedDown = crop.height() * crop.turnedHeight(picture);
        double most = Math.max(framedAcross, framedDown);
        double longer = Math.max(1, Math.min(Math.min(longerSide, MOST_PROOF_PIXELS), most));
        double perMm = longer / finished.longerSide().mm();
        int width = (int) Math.max(1, Math.round(finished.width().mm() * perMm));
        int height = (int) Math.max(1, Math.round(finished.height().mm() * perMm));
        int beyond = (int) Math.round(overhang.mm() * perMm);
        double ppi = perMm * Length.MM_PER_INCH;
        double inCopy = most * Math.min(1, Rendition.SIZES.getLast() / (double) Math.max(picture.width(), picture.height()));
        if (inCopy >= longer * 0.8) {
            return Framing.of(copy(id), crop, width, height, beyond).jpeg(ppi, PROOF_QUALITY);
        }
        return places.with(() -> unpacked(id,
                pixels -> Framing.of(pixels, crop, width, height, beyond).jpeg(ppi, PROOF_QUALITY)));
    }

    private static int pixels(Length length, double ppi) {
        return (int) Math.max(1, Math.round(length.toInches() * ppi));
    }

    private Frame copy(PictureId id) {
        Rendition rendition = pictures.rendition(id, Rendition.SIZES.getLast()).orElseThrow();
        try (TemporaryFile file = TemporaryFile.of(new ByteArrayInputStream(rendition.jpeg()), Long.MAX_VALUE)) {
            Facts facts = FirstLook.at(file.path(), IntakeLimits.USUAL);
            return Survey.of(file.path(), facts, rendition.px(), share -> { }).copy();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private interface Work<T> {
        T on(UnpackedPixels pixels);
    }

    private <T> T unpacked(PictureId id, Work<T> work) {
        try (InputStream original = pictures.original(id);
                TemporaryFile file = TemporaryFile.of(original, Long.MAX_VALUE);
                UnpackedPixels pixels = UnpackedPixels.of(file.path(), FirstLook.at(file.path(), IntakeLimits.USUAL))) {
            return work.on(pixels);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
