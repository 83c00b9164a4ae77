package puzzleworkshop.artwork;

import java.time.Clock;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.HouseUnits;
import puzzleworkshop.measure.Refused;

/**
 * Clears the originals of pictures whose orders have been closed, given up or run out as quotes for so many months: they
 * are most of what the workshop's data weigh, and nobody prints from them any more. What stays: the picture with its
 * fingerprint, the smaller copies for screens, and so the proof that a customer approved.
 */
@Service
public class OriginalsRule {

    public static final int MOST_MONTHS = 240;

    private final PictureStore store;
    private final ObjectProvider<PictureUse> uses;
    private final HouseUnits house;
    private final Clock clock;

    OriginalsRule(PictureStore store, ObjectProvider<PictureUse> uses, HouseUnits house, Clock clock) {
        this.store = store;
        this.uses = uses;
        this.house = house;
        this.clock = clock;
    }

    /** After how many months; empty: originals stay for good. */
    @Transactional(readOnly = true)
    public OptionalInt months() {
        return store.originalMonths();
    }

    /** @throws Refused when it is no number of months from 1 to 240 */
    @Transactional
    public void save(OptionalInt months) {
        if (months.isPresent() && (months.getAsInt() < 1 || months.getAsInt() > MOST_MONTHS)) {
            throw new Refused("artwork.originals.months", MOST_MONTHS);
        }
        store.saveOriginalMonths(months);
    }

    /** What a rule of so many months would clear now. */
    @Transactional(readOnly = true)
    public UnusedPictureCleanup.Kept wouldFree(int months) {
        Set<PictureId> done = doneWith(months);
        return new UnusedPictureCleanup.Kept(done.size(), store.bytesOf(done));
    }

    /** Clears by the rule; asked once a day. @return how many originals */
    public int clear() {
        OptionalInt months = store.originalMonths();
        if (months.isEmpty()) {
            return 0;
        }
        Instant now = clock.instant();
        Set<PictureId> done = doneWith(months.getAsInt());
        done.forEach(id -> store.clearOriginal(id, now));
        return done.size();
    }

    /** The last ones, newest first. */
    @Transactional(readOnly = true)
    public List<UnusedPictureCleanup.Clearing> clearings(int most) {
        return store.originalClearings(most);
    }

    private Set<PictureId> doneWith(int months) {
        Instant since =
                house.today().minusMonths(months).atStartOfDay(house.zone()).toInstant();
        Set<PictureId> done = new LinkedHashSet<>(store.withOriginalBefore(since));
        uses.forEach(use -> done.removeAll(use.needingOriginal(Set.copyOf(done), since)));
        return done;
    }
}
