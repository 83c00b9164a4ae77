package puzzleworkshop.artwork;

import com.drew.imaging.jpeg.JpegMetadataReader;
import com.drew.imaging.jpeg.JpegProcessingException;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifReader;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import org.springframework.stereotype.Component;
import puzzleworkshop.artwork.decoding.DecodeSlots;
import puzzleworkshop.artwork.decoding.TemporaryFile;
import puzzleworkshop.artwork.pixels.Frame;
import puzzleworkshop.artwork.pixels.Jpeg;
import puzzleworkshop.artwork.pixels.ReadPicture;
import puzzleworkshop.artwork.pixels.Shrink;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.artwork.reading.PictureFormat;
import puzzleworkshop.camera.Photo;
import puzzleworkshop.measure.Refused;

/**
 * Takes in photos that people at the workshop make of their work: a sheet, a cut edge, what went wrong. One way for all of
 * them: the content tells what the file is, its size is judged on the header before anything is decoded, and what is kept
 * is a small upright JPEG in the screen's colours that says nothing of camera, place or time.
 */
@Component
public class Photos {

    public static final int MOST_BYTES = 20_000_000;

    /** Pixels of the longer side: fine scorch marks are still seen, and a year of them stays small. */
    public static final int LONGEST = 1600;

    public static final String MEDIA_TYPE = "image/jpeg";

    private static final IntakeLimits LIMITS = new IntakeLimits(MOST_BYTES, 120_000_000L, 29_999);
    /** A little more than 12 megapixels have along their longer side: what is measured in is not made smaller. */
    private static final int LONGEST_MEASURED = 4200;

    private static final double FILM_DIAGONAL_MM = Math.hypot(36, 24);

    private static final float QUALITY = 0.86f;

    private static final int MEASURED_AT_ONCE = 2;
    private static final long MOST_WAIT_SECONDS = 60;

    private final Semaphore measuring = new Semaphore(MEASURED_AT_ONCE, true);
    private final DecodeSlots places;

    Photos(DecodeSlots places) {
        this.places = places;
    }

    /**
     * The photo as it is kept, a JPEG of about 300 kB at most. Read with the same bounds as what strangers send.
     *
     * @throws Refused when it is no photo, damaged or too large
     */
    public byte[] kept(byte[] file) {
        try (TemporaryFile copy = TemporaryFile.of(new ByteArrayInputStream(file), LIMITS.bytes() + 1)) {
            return kept(copy.path());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The same of a file on disk. */
    public byte[] kept(Path file) throws IOException {
        ReadPicture read = places.look(file, LIMITS, LONGEST, share -> {});
        if (read.facts().format() == PictureFormat.PDF) {
            throw new Refused("artwork.photo.pdf");
        }
        return Jpeg.write(read.survey().copy(), QUALITY);
    }

    /**
     * A photo to measure in.
     *
     * @param photo its own pixels, upright and in the screen's colours
     * @param small the same as it may be shown and kept, a JPEG
     * @param smallWidth of the small one, in pixels
     */
    public record ToMeasure(Photo photo, byte[] small, int smallWidth, int smallHeight) {

        /** Pixels of the small one for each of the photo's. */
        public double scale() {
            return (double) smallWidth / photo.width();
        }
    }

    /**
     * Measures in a photo: its own pixels are read, handed to the work, and not kept. A photo in memory is large and measuring
     * takes seconds of all cores, so two go on at a time, however many people send one.
     *
     * @throws Refused when it is no photo, damaged or too large, when no place became free in time, or as the work says
     */
    public <T> T measured(byte[] file, Function<ToMeasure, T> work) {
        try {
            if (!measuring.tryAcquire(MOST_WAIT_SECONDS, TimeUnit.SECONDS)) {
                throw new Refused("artwork.refused.busy");
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new Refused("artwork.refused.busy");
        }
        try {
            return work.apply(toMeasure(file));
        } finally {
            measuring.release();
        }
    }

    private ToMeasure toMeasure(byte[] file) {
        Frame frame = pixels(file);
        double scale = Math.min(1, (double) LONGEST / Math.max(frame.width(), frame.height()));
        int width = (int) Math.max(1, Math.round(frame.width() * scale));
        int height = (int) Math.max(1, Math.round(frame.height() * scale));
        Frame small = scale == 1 ? frame : Shrink.of(frame, width, height);
        int[] rgb = new int[frame.width() * frame.height()];
        byte[] samples = frame.samples();
        for (int i = 0; i < rgb.length; i++) {
            rgb[i] = (samples[3 * i] & 0xFF) << 16 | (samples[3 * i + 1] & 0xFF) << 8 | samples[3 * i + 2] & 0xFF;
        }
        return new ToMeasure(
                new Photo(frame.width(), frame.height(), rgb, focal(file, frame.width(), frame.height())),
                Jpeg.write(small, QUALITY),
                width,
                height);
    }

    /**
     * Focal length over the longer side, from what a 35 mm camera with the same angle of view would have (Exif tag 41989, CIPA
     * DC-008): the equivalent goes by the diagonal, 43.27 mm on film. Not a number where it is not said, or where the photo was
     * cut since: then it has other proportions, or more pixels are told than are there.
     */
    public static double focal(byte[] file, int width, int height) {
        try {
            Metadata metadata =
                    JpegMetadataReader.readMetadata(new ByteArrayInputStream(file), List.of(new ExifReader()));
            ExifSubIFDDirectory exif = metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
            Integer film = exif == null ? null : exif.getInteger(ExifSubIFDDirectory.TAG_35MM_FILM_EQUIV_FOCAL_LENGTH);
            if (film == null || film <= 0) {
                return Double.NaN;
            }
            double longer = Math.max(width, height);
            double shorter = Math.min(width, height);
            Integer across = exif.getInteger(ExifSubIFDDirectory.TAG_EXIF_IMAGE_WIDTH);
            Integer down = exif.getInteger(ExifSubIFDDirectory.TAG_EXIF_IMAGE_HEIGHT);
            boolean whole = across == null
                    || down == null
                    || Math.abs((double) Math.max(across, down) / Math.min(across, down) / (longer / shorter) - 1)
                            < 0.01;
            return whole ? film / FILM_DIAGONAL_MM * Math.hypot(longer, shorter) / longer : Double.NaN;
        } catch (JpegProcessingException | IOException | RuntimeException broken) {
            return Double.NaN;
        }
    }

    private Frame pixels(byte[] file) {
        try (TemporaryFile copy = TemporaryFile.of(new ByteArrayInputStream(file), LIMITS.bytes() + 1)) {
            ReadPicture read = places.look(copy.path(), LIMITS, LONGEST_MEASURED, share -> {});
            if (read.facts().format() == PictureFormat.PDF) {
                throw new Refused("artwork.photo.pdf");
            }
            return read.survey().copy();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
