package puzzleworkshop.artwork.decoding;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;
import puzzleworkshop.artwork.pixels.ReadPicture;
import puzzleworkshop.artwork.pixels.Survey;
import puzzleworkshop.artwork.pixels.UnpackedPixels;
import puzzleworkshop.artwork.reading.ImageHeader;
import puzzleworkshop.artwork.reading.IntakeLimits;
import puzzleworkshop.artwork.rows.ImageProbe;
import puzzleworkshop.artwork.separate.SeparateReader;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.WorkLimit;

/**
 * Full pictures are decoded two at a time, so that memory stays bounded however many people send or print at once. Every
 * reading ends: row by row where the reader gives rows, else with the process it runs in. So no place is ever lost.
 */
@Component
public class DecodeSlots {

    private static final int AT_ONCE = 2;
    private static final long WAIT_SECONDS = 60;

    /** What any file may take; the larger the file, the longer, since who sends much pays for it. */
    private static final Duration SHORTEST = Duration.ofMillis(4000);

    private static final long BYTES_IN_SHORTEST = 8 << 20;
    private static final long MILLIS_PER_FURTHER_MEGABYTE = 500;

    /** By the clock it may take so many times as long as on the processor, which other work may keep busy. */
    private static final int MOST_TIMES = 6;

    /** For what was taken in already. */
    private static final Duration FOR_PRINT = Duration.ofSeconds(90);

    private final Semaphore free = new Semaphore(AT_ONCE, true);
    private final Semaphore freeApart = new Semaphore(AT_ONCE, true);

    /** Work of our own on pictures that were taken in. */
    public <T> T with(Supplier<T> work) {
        take(free);
        try {
            return work.get();
        } finally {
            free.release();
        }
    }

    /**
     * Looks a stranger's file over: its head, then all its pixels once.
     *
     * @throws Refused when it cannot be used, takes too long, or no place became free in time
     */
    public ReadPicture look(Path file, IntakeLimits limits, int longerSide, Consumer<Double> progress)
            throws IOException {
        Duration time = timeFor(Files.size(file));
        boolean apart = SeparateReader.isNeeded(file, limits);
        Semaphore places = apart ? freeApart : free;
        take(places);
        try {
            return apart
                    ? SeparateReader.look(file, limits, longerSide, time, progress)
                    : onThreadOfItsOwn(() -> lookHere(file, limits, longerSide, time, progress));
        } catch (StackOverflowError nested) {
            throw new Refused("artwork.refused.damaged");
        } catch (OutOfMemoryError tooMuch) {
            throw new Refused("artwork.refused.too-much-memory");
        } finally {
            places.release();
        }
    }

    private static ReadPicture lookHere(
            Path file, IntakeLimits limits, int longerSide, Duration time, Consumer<Double> progress)
            throws IOException {
        ImageHeader facts = ImageProbe.at(file, limits);
        WorkLimit limit = WorkLimit.ofWork(
                Long.MAX_VALUE, time, time.multipliedBy(MOST_TIMES), () -> new Refused("artwork.refused.endless"));
        return new ReadPicture(facts, Survey.of(file, facts, longerSide, limit, progress));
    }

    /** Of a virtual thread, as requests have, nobody tells the time on the processor. */
    private static ReadPicture onThreadOfItsOwn(Callable<ReadPicture> work) throws IOException {
        FutureTask<ReadPicture> task = new FutureTask<>(work);
        Thread thread = Thread.ofPlatform().name("reading").daemon().start(task);
        try {
            return task.get();
        } catch (InterruptedException stopped) {
            thread.interrupt();
            Thread.currentThread().interrupt();
            throw new Refused("artwork.refused.busy");
        } catch (ExecutionException failed) {
            switch (failed.getCause()) {
                case IOException unreadable -> throw unreadable;
                case RuntimeException refused -> throw refused;
                case Error error -> throw error;
                default -> throw new IllegalStateException(failed.getCause());
            }
        }
    }

    /** All pixels of a picture that was taken in. */
    public UnpackedPixels unpack(Path file) throws IOException {
        if (!SeparateReader.isNeeded(file, IntakeLimits.USUAL)) {
            return UnpackedPixels.of(file, ImageProbe.at(file, IntakeLimits.USUAL));
        }
        take(freeApart);
        try {
            return SeparateReader.unpack(file, IntakeLimits.USUAL, FOR_PRINT);
        } finally {
            freeApart.release();
        }
    }

    public static Duration timeFor(long bytes) {
        long further = Math.max(0, bytes - BYTES_IN_SHORTEST) >> 20;
        return SHORTEST.plusMillis(further * MILLIS_PER_FURTHER_MEGABYTE);
    }

    private static void take(Semaphore places) {
        try {
            if (!places.tryAcquire(WAIT_SECONDS, TimeUnit.SECONDS)) {
                throw new Refused("artwork.refused.busy");
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new Refused("artwork.refused.busy");
        }
    }
}
