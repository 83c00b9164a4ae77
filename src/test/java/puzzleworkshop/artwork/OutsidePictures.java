package puzzleworkshop.artwork;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.UUID;
import puzzleworkshop.artwork.decoding.DecodeSlots;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.measure.Refused;

/** Takes pictures in as the program does, all but the storing. */
public final class OutsidePictures {

    private final Intake intake = new Intake(IntakeLimits.USUAL, new DecodeSlots());

    /** @throws Refused when it is not taken */
    public Picture look(Path file) throws IOException {
        return intake.look(
                        new PictureId(UUID.randomUUID()),
                        file.getFileName().toString(),
                        file,
                        Instant.EPOCH,
                        share -> {})
                .picture();
    }
}
