package puzzleworkshop.artwork;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import puzzleworkshop.artwork.decoding.DecodeSlots;
import puzzleworkshop.artwork.pixels.Frame;
import puzzleworkshop.artwork.pixels.Jpeg;
import puzzleworkshop.artwork.pixels.ReadPicture;
import puzzleworkshop.artwork.pixels.Shrink;
import puzzleworkshop.artwork.pixels.Survey;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.IntakeLimits;

/** Looks a file over: what it is, how it is made, and its smaller copies, all in one pass over the pixels. */
final class Intake {

    private static final float QUALITY = 0.86f;
    private static final int LONGEST_NAME = 200;

    private final IntakeLimits limits;
    private final DecodeSlots places;

    /** A picture and its smaller copies. */
    record Taken(Picture picture, List<Rendition> renditions) {}

    Intake(IntakeLimits limits, DecodeSlots places) {
        this.limits = limits;
        this.places = places;
    }

    IntakeLimits limits() {
        return limits;
    }

    Taken look(PictureId id, String fileName, Path file, Instant now, Consumer<Double> progress) throws IOException {
        ReadPicture read = places.look(file, limits, Rendition.SIZES.getLast(), progress);
        ImageHeader facts = read.facts();
        Survey survey = read.survey();
        Optional<PictureLook> look = Optional.of(new PictureLook(
                survey.detail().orElse(1),
                survey.light().darkShare(),
                survey.light().median(),
                survey.light().contrast()));
        Picture picture = new Picture(
                id,
                shown(fileName),
                facts.format(),
                facts.uprightWidth(),
                facts.uprightHeight(),
                facts.orientation(),
                sha256(file),
                Files.size(file),
                facts.colours(),
                look,
                facts.notices(),
                now);
        return new Taken(picture, renditions(id, survey.copy()));
    }

    private static List<Rendition> renditions(PictureId id, Frame largest) {
        List<Rendition> renditions = new ArrayList<>();
        for (int px : Rendition.SIZES) {
            double scale = Math.min(1, (double) px / Math.max(largest.width(), largest.height()));
            int width = (int) Math.max(1, Math.round(largest.width() * scale));
            int height = (int) Math.max(1, Math.round(largest.height() * scale));
            Frame frame = scale == 1 ? largest : Shrink.of(largest, width, height);
            renditions.add(new Rendition(id, px, width, height, Jpeg.write(frame, QUALITY)));
        }
        return renditions;
    }

    /** The last part of a path, without control characters, at most so long. */
    private static String shown(String fileName) {
        String last = fileName == null
                ? ""
                : fileName.substring(Math.max(fileName.lastIndexOf('/'), fileName.lastIndexOf('\\')) + 1);
        String clean = last.replaceAll("\\p{Cntrl}", "").strip();
        return clean.length() <= LONGEST_NAME ? clean : clean.substring(0, LONGEST_NAME);
    }

    private static String sha256(Path file) throws IOException {
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), MessageDigest.getInstance("SHA-256"))) {
            byte[] block = new byte[64 * 1024];
            while (in.read(block) >= 0) {
                // Reading is what feeds the digest.
            }
            return HexFormat.of()
                    .formatHex(((DigestInputStream) in).getMessageDigest().digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
