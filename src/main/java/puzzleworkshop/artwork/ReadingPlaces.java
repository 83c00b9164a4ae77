package puzzleworkshop.artwork;

import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Refused;

/** Full pictures are decoded two at a time, so that memory stays bounded however many people send or print at once. */
@Component
class ReadingPlaces {

    private static final int AT_ONCE = 2;
    private static final long WAIT_SECONDS = 60;

    private final Semaphore free = new Semaphore(AT_ONCE, true);

    /** @throws Refused when no place became free in time: ask again in a minute */
    <T> T with(Supplier<T> work) {
        try {
            if (!free.tryAcquire(WAIT_SECONDS, TimeUnit.SECONDS)) {
                throw new Refused("artwork.refused.busy");
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new Refused("artwork.refused.busy");
        }
        try {
            return work.get();
        } finally {
            free.release();
        }
    }
}
