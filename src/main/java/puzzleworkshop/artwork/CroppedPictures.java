package puzzleworkshop.artwork;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.BiFunction;
import org.springframework.stereotype.Service;
import puzzleworkshop.artwork.decoding.DecodeSlots;
import puzzleworkshop.artwork.decoding.TemporaryFile;
import puzzleworkshop.artwork.pixels.Crop;
import puzzleworkshop.artwork.pixels.Frame;
import puzzleworkshop.artwork.pixels.Framing;
import puzzleworkshop.artwork.pixels.UnpackedPixels;
import puzzleworkshop.artwork.reading.BareJpeg;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.artwork.rows.ImageProbe;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;

/** Draws a picture as it is cropped: turned, with border, with overhang; small for screens and papers, full for print. */
@Service
public class CroppedPictures {

    private static final float PRINT_QUALITY = 0.95f;
    private static final float PROOF_QUALITY = 0.88f;
    private static final int MOST_PROOF_PIXELS = 4000;
    /** A copy with so many of the pixels wanted is taken before the original is read. */
    private static final double NEARLY = 0.8;

    private final Pictures pictures;
    private final DecodeSlots places;

    CroppedPictures(Pictures pictures, DecodeSlots places) {
        this.pictures = pictures;
        this.places = places;
    }

    /**
     * The print of a crop at full resolution, never enlarged. A JPEG goes as it is, bit for bit without its metadata,
     * wherever no pixel has to be drawn anew; all else is drawn in strips. The heap holds some rows, however large the
     * picture is; what is made is a file.
     *
     * @param finished the puzzle without overhang
     * @param overhang print beyond the outer cut on every side
     * @param mostPpi pixels per inch of what is drawn anew
     */
    public PrintPicture print(PictureId id, Crop crop, Size finished, Length overhang, double mostPpi) {
        try (InputStream original = pictures.original(id);
                TemporaryFile file = TemporaryFile.of(original, Long.MAX_VALUE)) {
            double own = Resolution.judge(pictures.get(id), crop, finished, overhang, PrintLimits.USUAL)
                    .ppi();
            return places.with(() -> print(file.path(), crop, finished, overhang, own, mostPpi, places::unpack));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** How a file's pixels are had. */
    @FunctionalInterface
    private interface Unpacking {
        UnpackedPixels of(Path file) throws IOException;
    }

    /** The same of a file of our own. */
    static PrintPicture print(Path original, Crop crop, Size finished, Length overhang, double ownPpi, double mostPpi) {
        return print(
                original,
                crop,
                finished,
                overhang,
                ownPpi,
                mostPpi,
                file -> UnpackedPixels.of(file, ImageProbe.at(file, IntakeLimits.USUAL)));
    }

    private static PrintPicture print(
            Path original,
            Crop crop,
            Size finished,
            Length overhang,
            double ownPpi,
            double mostPpi,
            Unpacking unpacking) {
        try {
            Optional<PrintPicture> untouched = untouched(original, crop, finished, overhang, ownPpi);
            return untouched.isPresent()
                    ? untouched.get()
                    : drawn(unpacking.of(original), crop, finished, overhang, Math.min(ownPpi, mostPpi));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Optional<PrintPicture> untouched(Path file, Crop crop, Size finished, Length overhang, double ppi)
            throws IOException {
        if (!ImageProbe.isJpeg(file)) {
            return Optional.empty();
        }
        ImageHeader facts = ImageProbe.at(file, IntakeLimits.USUAL);
        if (facts.scan().filter(ImageHeader.JpegScan::plain).isEmpty()
                || !PrintLayout.canShow(crop, finished, overhang)) {
            return Optional.empty();
        }
        int channels = facts.scan().get().components();
        TemporaryFile bare = TemporaryFile.empty();
        if (!BareJpeg.copy(file, bare.path())) {
            bare.close();
            return Optional.empty();
        }
        return Optional.of(new PrintPicture(
                bare.path(),
                facts.storedWidth(),
                facts.storedHeight(),
                channels,
                facts.usableProfile(channels),
                PrintLayout.of(facts.orientation(), crop, finished, overhang),
                crop.fit() == Crop.Fit.FIT ? OptionalInt.of(crop.borderRgb()) : OptionalInt.empty(),
                ppi,
                true));
    }

    private static PrintPicture drawn(UnpackedPixels unpacked, Crop crop, Size finished, Length overhang, double ppi) {
        int width = pixels(finished.width(), ppi);
        int height = pixels(finished.height(), ppi);
        int beyond = (int) Math.ceil(overhang.toInches() * ppi - 1e-9);
        try (UnpackedPixels pixels = unpacked) {
            Framing framing = Framing.of(pixels, crop, width, height, beyond);
            double drawn = width / finished.width().toInches();
            Size printed = finished.grownBy(Length.inches(beyond / drawn));
            TemporaryFile jpeg = TemporaryFile.empty();
            try {
                framing.jpeg(drawn, PRINT_QUALITY, jpeg.path());
            } catch (IOException | RuntimeException failed) {
                jpeg.close();
                throw failed;
            }
            return new PrintPicture(
                    jpeg.path(),
                    framing.width(),
                    framing.height(),
                    3,
                    Optional.empty(),
                    PrintLayout.middle(printed, finished.grownBy(overhang)),
                    OptionalInt.empty(),
                    drawn,
                    false);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * A picture of the crop for screens and papers.
     *
     * @param overhang zero for the finished puzzle alone
     * @param longerSide pixels wanted along the longer side of the finished puzzle, at most 4,000; never enlarged
     * @return JPEG
     */
    public byte[] proof(PictureId id, Crop crop, Size finished, Length overhang, int longerSide) {
        return framed(id, crop, finished, overhang, longerSide, (framing, ppi) -> framing.jpeg(ppi, PROOF_QUALITY));
    }

    /** The same of the finished puzzle alone, as an image to draw on. */
    public BufferedImage face(PictureId id, Crop crop, Size finished, int longerSide) {
        return framed(id, crop, finished, Length.ZERO, longerSide, (framing, ppi) -> framing.image());
    }

    /** From the smallest of the screens' copies that has the pixels, else from the original. */
    private <T> T framed(
            PictureId id,
            Crop crop,
            Size finished,
            Length overhang,
            int longerSide,
            BiFunction<Framing, Double, T> work) {
        Picture picture = pictures.get(id);
        double framedAcross = crop.width() * crop.turnedWidth(picture);
        double framedDown = crop.height() * crop.turnedHeight(picture);
        double most = Math.max(framedAcross, framedDown);
        boolean copiesOnly = !pictures.hasOriginal(id);
        double largestCopy =
                Math.min(1, (double) Rendition.SIZES.getLast() / Math.max(picture.width(), picture.height()));
        double had = copiesOnly ? most * largestCopy : most;
        double longer = Math.max(1, Math.min(Math.min(longerSide, MOST_PROOF_PIXELS), had));
        double perMm = longer / finished.longerSide().mm();
        int width = (int) Math.max(1, Math.round(finished.width().mm() * perMm));
        int height = (int) Math.max(1, Math.round(finished.height().mm() * perMm));
        int beyond = (int) Math.round(overhang.mm() * perMm);
        double ppi = perMm * Length.MM_PER_INCH;
        int whole = (int) Math.ceil(longer / most * Math.max(picture.width(), picture.height()));
        if (copiesOnly || whole <= Rendition.SIZES.getLast() / NEARLY) {
            Frame copy = Frame.of(pictures.rendition(id, Math.min(whole, Rendition.SIZES.getLast()))
                    .orElseThrow()
                    .jpeg());
            return work.apply(Framing.of(copy, crop, width, height, beyond), ppi);
        }
        return places.with(() ->
                unpacked(id, pixels -> work.apply(Framing.of(pixels, crop, width, height, beyond), ppi)));
    }

    private static int pixels(Length length, double ppi) {
        return (int) Math.max(1, Math.round(length.toInches() * ppi));
    }

    private interface Work<T> {
        T on(UnpackedPixels pixels);
    }

    private <T> T unpacked(PictureId id, Work<T> work) {
        try (InputStream original = pictures.original(id);
                TemporaryFile file = TemporaryFile.of(original, Long.MAX_VALUE);
                UnpackedPixels pixels = places.unpack(file.path())) {
            return work.on(pixels);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
