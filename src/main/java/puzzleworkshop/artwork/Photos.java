package puzzleworkshop.artwork;

import java.io.IOException;
import java.nio.file.Path;
import org.springframework.stereotype.Service;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.artwork.reading.Jpeg;
import puzzleworkshop.measure.Refused;

/**
 * The one way photos come in that are no customer's picture: of a sheet, of the bench, of a cut edge. Told by their content,
 * upright, small enough to keep, and without anything that a camera wrote into them. Read with the same bounds as
 * customers' pictures.
 */
@Service
public class Photos {

    /** Largest file taken. */
    public static final int MOST_BYTES = 40_000_000;

    private static final int LONGEST = 1600;
    private static final IntakeLimits LIMITS = new IntakeLimits(MOST_BYTES, 120_000_000L, 29_999);
    private static final float QUALITY = 0.85f;

    private final DecodeSlots slots;

    Photos(DecodeSlots slots) {
        this.slots = slots;
    }

    /**
     * @return a JPEG of at most 1,600 pixels on the longer side
     * @throws Refused when it is no picture that can be read
     */
    public byte[] reduced(Path photo) throws IOException {
        return Jpeg.write(
                slots.look(photo, LIMITS, LONGEST, share -> {}).survey().copy(), QUALITY);
    }
}
