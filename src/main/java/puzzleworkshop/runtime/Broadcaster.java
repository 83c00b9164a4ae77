package puzzleworkshop.runtime;

import jakarta.annotation.PreDestroy;
import java.time.Duration;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/**
 * Brings changes to open screens: never in the thread of whoever made the change, and gathered, so that a screen is shown
 * again once for many changes in quick succession.
 */
@Component
public class Broadcaster {

    /** A listener is called when nothing has changed for so long, */
    static final Duration QUIET = Duration.ofMillis(250);

    /** at latest so long after the first change. */
    static final Duration LATEST = Duration.ofSeconds(1);

    private static final Logger LOG = LoggerFactory.getLogger(Broadcaster.class);

    private final List<Screen> screens = new CopyOnWriteArrayList<>();
    private final ScheduledExecutorService clockwork = Executors.newSingleThreadScheduledExecutor(
            Thread.ofPlatform().daemon().name("news-", 0).factory());

    /**
     * Listens until told to stop. The listener is called in a thread of its own with all that changed since it was called
     * last.
     *
     * @param concerns which changes the screen shows
     */
    public Listening listen(Predicate<Change> concerns, Consumer<Set<Change>> listener) {
        Screen screen = new Screen(concerns, listener);
        screens.add(screen);
        return screen;
    }

    /** After those who keep answers have forgotten them. */
    @EventListener
    @Order(Ordered.LOWEST_PRECEDENCE)
    void changed(Change change) {
        for (Screen screen : screens) {
            if (screen.concerns.test(change)) {
                screen.add(change);
            }
        }
    }

    @PreDestroy
    void stop() {
        clockwork.shutdownNow();
    }

    /** A screen's ear. */
    public interface Listening {

        /** The screen is about to be shown anew anyway: what has changed until now need not be told to it any more. */
        void seen();

        void stop();
    }

    private final class Screen implements Listening {

        private final Predicate<Change> concerns;
        private final Consumer<Set<Change>> listener;
        private Set<Change> gathered = new LinkedHashSet<>();
        private long first;
        private long last;

        Screen(Predicate<Change> concerns, Consumer<Set<Change>> listener) {
            this.concerns = concerns;
            this.listener = listener;
        }

        @Override
        public synchronized void seen() {
            gathered.clear();
        }

        @Override
        public void stop() {
            screens.remove(this);
        }

        synchronized void add(Change change) {
            last = System.nanoTime();
            boolean waiting = !gathered.isEmpty();
            gathered.add(change);
            if (!waiting) {
                first = last;
                after(QUIET.toNanos());
            }
        }

        private void after(long nanos) {
            clockwork.schedule(this::due, nanos, TimeUnit.NANOSECONDS);
        }

        private synchronized void due() {
            if (gathered.isEmpty()) {
                return;
            }
            long now = System.nanoTime();
            long wait = Math.min(QUIET.toNanos() - (now - last), LATEST.toNanos() - (now - first));
            if (wait > 0) {
                after(wait);
                return;
            }
            Set<Change> news = gathered;
            gathered = new LinkedHashSet<>();
            if (screens.contains(this)) {
                Thread.ofVirtual().name("screen-news").start(() -> tell(news));
            }
        }

        private void tell(Set<Change> news) {
            try {
                listener.accept(news);
            } catch (RuntimeException failed) {
                LOG.error("A screen could not be told what has changed", failed);
            }
        }
    }
}
