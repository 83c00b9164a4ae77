package puzzleworkshop.artwork.reading;

import com.twelvemonkeys.imageio.metadata.CompoundDirectory;
import com.twelvemonkeys.imageio.metadata.Directory;
import com.twelvemonkeys.imageio.metadata.Entry;
import com.twelvemonkeys.imageio.metadata.tiff.TIFFReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageInputStream;
import puzzleworkshop.artwork.reading.ColourFacts.Model;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;

/** The first directory of a TIFF (TIFF 6.0): size, colours, profile, orientation; and whether it is a camera's raw file. */
public final class TiffHead {

    private static final int SUBFILE = 254;
    private static final int WIDTH = 256;
    private static final int HEIGHT = 257;
    private static final int BITS = 258;
    private static final int PHOTOMETRIC = 262;
    private static final int ORIENTATION = 274;
    private static final int EXTRA_SAMPLES = 338;
    private static final int ICC = 34675;
    private static final int DNG_VERSION = 50706;

    private TiffHead() {}

    public static ImageHeader read(Path file) throws IOException {
        Directory all;
        try (ImageInputStream in = new FileImageInputStream(file.toFile())) {
            all = new TIFFReader().read(in);
        } catch (IOException | RuntimeException broken) {
            throw new Refused("artwork.refused.damaged");
        }
        int pages = all instanceof CompoundDirectory several ? several.directoryCount() : 1;
        Directory first = all instanceof CompoundDirectory several && pages > 0 ? several.getDirectory(0) : all;
        // Raw files are TIFFs whose first directory is a reduced preview or carries a DNG version.
        if (first.getEntryById(DNG_VERSION) != null || (number(first, SUBFILE, 0) & 1) == 1) {
            throw new Refused("artwork.refused.camera-raw");
        }
        int width = number(first, WIDTH, 0);
        int height = number(first, HEIGHT, 0);
        int photometric = number(first, PHOTOMETRIC, 2);
        Model model = photometric <= 1 ? Model.GREY : photometric == 5 ? Model.CMYK : Model.RGB;
        boolean alpha = first.getEntryById(EXTRA_SAMPLES) != null;
        int orientation = number(first, ORIENTATION, 1);
        Optional<byte[]> icc = Optional.ofNullable(first.getEntryById(ICC))
                .map(Entry::getValue)
                .filter(byte[].class::isInstance)
                .map(byte[].class::cast);
        List<Sentence> notices = new ArrayList<>();
        if (alpha) {
            notices.add(Sentence.of("artwork.notice.alpha"));
        }
        if (pages > 1) {
            notices.add(Sentence.of("artwork.notice.first-page", pages));
        }
        if (model == Model.CMYK) {
            notices.add(Sentence.of(icc.isPresent() ? "artwork.notice.cmyk" : "artwork.notice.cmyk-without-profile"));
        }
        ColourFacts colours = new ColourFacts(model, number(first, BITS, 8), alpha, icc.flatMap(Profiles::name));
        return new ImageHeader(
                PictureFormat.TIFF,
                width,
                height,
                orientation < 1 || orientation > 8 ? 1 : orientation,
                colours,
                icc,
                Optional.empty(),
                notices);
    }

    private static int number(Directory directory, int tag, int otherwise) {
        Entry entry = directory.getEntryById(tag);
        Object value = entry == null ? null : entry.getValue();
        return switch (value) {
            case Number one -> one.intValue();
            case int[] several when several.length > 0 -> several[0];
            case short[] several when several.length > 0 -> several[0];
            case long[] several when several.length > 0 -> (int) several[0];
            case byte[] several when several.length > 0 -> several[0];
            case null, default -> otherwise;
        };
    }
}
