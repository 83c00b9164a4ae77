package puzzleworkshop.artwork;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.scheduling.annotation.EnableScheduling;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Service;

/**
 * Throws away pictures that came in and were never used: tried in a new order that was given up, or replaced by another.
 * Rooms say what they use; should one forget, the database's foreign keys still keep the picture.
 */
@Service
@EnableScheduling
public class UnusedPictureCleanup {

    /** Time enough for an order that was begun to be saved. */
    public static final Duration KEPT = Duration.ofDays(30);

    private static final Logger LOG = LoggerFactory.getLogger(UnusedPictureCleanup.class);

    private final PictureStore store;
    private final ObjectProvider<PictureUse> uses;
    private final OriginalsRule originals;
    private final Clock clock;
    private LocalDate lastDay = LocalDate.MIN;

    UnusedPictureCleanup(PictureStore store, ObjectProvider<PictureUse> uses, OriginalsRule originals, Clock clock) {
        this.store = store;
        this.uses = uses;
        this.originals = originals;
        this.clock = clock;
    }

    /** One clearing: when, how many pictures and how many bytes. */
    public record Clearing(Instant at, int pictures, long bytes) {}

    /** How many pictures are kept, and the bytes of their originals. */
    public record Kept(int pictures, long bytes) {}

    /** Asked every hour, done once a day: a program that is started in the morning does it too. */
    @Scheduled(initialDelay = 10, fixedDelay = 60, timeUnit = TimeUnit.MINUTES)
    void daily() {
        LocalDate today = LocalDate.now(clock);
        if (!today.equals(lastDay)) {
            clear();
            originals.clear();
            lastDay = today;
        }
    }

    /** @return how many pictures were thrown away */
    public int clear() {
        Instant now = clock.instant();
        Set<PictureId> unused = new LinkedHashSet<>(store.receivedBefore(now.minus(KEPT)));
        uses.forEach(use -> unused.removeAll(use.inUse(Set.copyOf(unused))));
        int cleared = 0;
        for (PictureId id : unused) {
            try {
                store.clear(id, now);
                cleared++;
            } catch (DataIntegrityViolationException used) {
                LOG.info("Picture {} is kept: something uses it", id);
            }
        }
        return cleared;
    }

    /** Throws one away now that was replaced, unless something still uses it. */
    public void clear(PictureId id) {
        for (PictureUse use : uses) {
            if (use.inUse(Set.of(id)).contains(id)) {
                return;
            }
        }
        try {
            store.clear(id, clock.instant());
        } catch (DataIntegrityViolationException used) {
            LOG.info("Picture {} is kept: something uses it", id);
        }
    }

    /** The last ones, newest first. */
    public List<Clearing> clearings(int most) {
        return store.clearings(most);
    }

    public Kept kept() {
        return store.kept();
    }
}
