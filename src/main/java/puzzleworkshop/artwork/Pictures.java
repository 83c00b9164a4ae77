package puzzleworkshop.artwork;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.artwork.decoding.DecodeSlots;
import puzzleworkshop.artwork.decoding.TemporaryFile;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.measure.Refused;

/** The workshop's pictures: takes them in, keeps the originals untouched, and hands out smaller copies for screens. */
@Service
public class Pictures {

    private final PictureStore store;
    private final Clock clock;
    private final Intake intake;

    Pictures(PictureStore store, DecodeSlots places, Clock clock) {
        this.store = store;
        this.clock = clock;
        this.intake = new Intake(IntakeLimits.USUAL, places);
    }

    /**
     * Takes a file in. Its content decides what it is; its size is judged on the header before anything is decoded.
     *
     * @param fileName as the sender calls it; shown, never trusted
     * @throws Refused when it cannot become a puzzle; the sentence says why and what to send instead
     */
    public Picture take(String fileName, Path file) throws IOException {
        return take(fileName, file, share -> {});
    }

    /** The same with progress: shares from 0 to 1, told from the calling thread. */
    public Picture take(String fileName, Path file, Consumer<Double> progress) throws IOException {
        // Outside a transaction: looking takes seconds, and a connection is not held for it.
        Intake.Taken taken = intake.look(new PictureId(UUID.randomUUID()), fileName, file, clock.instant(), progress);
        store.add(taken, file);
        return taken.picture();
    }

    /** Takes in what a stream holds, at most one byte more than is allowed. */
    public Picture take(String fileName, InputStream content) throws IOException {
        try (TemporaryFile file = TemporaryFile.of(content, intake.limits().bytes() + 1)) {
            return take(fileName, file.path());
        }
    }

    @Transactional(readOnly = true)
    public Optional<Picture> find(PictureId id) {
        return store.find(id);
    }

    /** The picture of a known id. */
    @Transactional(readOnly = true)
    public Picture get(PictureId id) {
        return store.find(id).orElseThrow(() -> new Refused("artwork.unknown"));
    }

    /**
     * The file as it was sent, byte for byte. The caller closes the stream.
     *
     * @throws Refused when the original was cleared by {@link OriginalsRule}
     */
    public InputStream original(PictureId id) {
        Optional<Instant> cleared = store.originalCleared(id);
        if (cleared.isPresent()) {
            throw new Refused("artwork.originals.gone", cleared.get());
        }
        return store.original(id);
    }

    /** Whether the picture can still be printed from. */
    public boolean hasOriginal(PictureId id) {
        return store.originalCleared(id).isEmpty();
    }

    /**
     * A smaller copy for screens: JPEG, upright, sRGB, without anything of the original's metadata.
     *
     * @param px the longer side wanted; the next larger of {@link Rendition#SIZES} is given, never enlarged
     */
    @Transactional(readOnly = true)
    public Optional<Rendition> rendition(PictureId id, int px) {
        return store.rendition(id, Rendition.sizeFor(px));
    }
}
