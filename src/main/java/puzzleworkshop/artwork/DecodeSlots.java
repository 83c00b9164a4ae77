package puzzleworkshop.artwork;

import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Refused;

/** Full pictures are decoded two at a time, so that memory stays bounded however many people send or print at once. */
@Component
class DecodeSlots {

    private static final int AT_ONCE = 2;
    private static final long WAIT_SECONDS = 60;
    private static final long LONGEST_DRAWING_SECONDS = 60;

    private final Semaphore free = new Semaphore(AT_ONCE, true);
    private final Semaphore freeForPages = new Semaphore(1, true);

    /** @throws Refused when no place became free in time: ask again in a minute */
    <T> T with(Supplier<T> work) {
        take(free);
        try {
            return work.get();
        } finally {
            free.release();
        }
    }

    /**
     * For drawing a page, which is a program that a stranger wrote and may never end: it has a place of its own and a
     * thread of its own, and is given up after a minute. Its place is free again when the thread has really ended.
     */
    <T> T drawing(Supplier<T> work) {
        take(freeForPages);
        FutureTask<T> task = new FutureTask<>(() -> {
            try {
                return work.get();
            } finally {
                freeForPages.release();
            }
        });
        Thread.ofPlatform().name("page-drawing").daemon().start(task);
        try {
            return task.get(LONGEST_DRAWING_SECONDS, TimeUnit.SECONDS);
        } catch (TimeoutException endless) {
            task.cancel(true);
            throw new Refused("artwork.refused.endless");
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            throw new Refused("artwork.refused.busy");
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new IllegalStateException(failed.getCause());
        }
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
