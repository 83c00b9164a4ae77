package puzzleworkshop.delivery.sending;

import java.util.List;
import java.util.Optional;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.runtime.Change;
import puzzleworkshop.runtime.VersionedCache;

/**
 * The ways of sending with their prices and limits; which ways there are and when they leave is set with the hours. Asked for by
 * every part of a page that says how an order leaves: kept until one is saved.
 */
@Service
public class SendingWays {

    private final SendingStore store;
    private final WorkingTimes times;
    private final AfterCommit afterCommit;
    /** By what the hours say of the ways. */
    private final VersionedCache<List<DeliveryWay>, List<SendingWay>> known =
            VersionedCache.<List<DeliveryWay>, List<SendingWay>>ofMost(2).restingOn(WaysChanged.class);

    SendingWays(SendingStore store, WorkingTimes times, AfterCommit afterCommit) {
        this.store = store;
        this.times = times;
        this.afterCommit = afterCommit;
    }

    /** Told when what sending by a way takes or costs was saved. */
    public record WaysChanged() implements Change {}

    /** Before those who look at the ways again. */
    @EventListener(WaysChanged.class)
    @Order(Ordered.HIGHEST_PRECEDENCE)
    void forget() {
        known.forget();
    }

    /** The usual way first. */
    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public List<SendingWay> all() {
        List<DeliveryWay> ways = times.ways();
        return known.get(ways, () -> store.of(ways));
    }

    /** The way with this number, or the usual one. */
    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public SendingWay orUsual(Optional<Long> way) {
        List<SendingWay> all = all();
        return way.flatMap(
                        id -> all.stream().filter(one -> one.way().id() == id).findFirst())
                .orElseGet(all::getFirst);
    }

    /**
     * Keeps what sending by a way takes and costs.
     *
     * @throws Refused when its link does not say where the number goes, its price list goes against itself, or it goes nowhere
     */
    @Transactional
    public void save(SendingWay way) {
        if (!way.linkPattern().isEmpty()
                && (!way.linkPattern().matches("https?://\\S+")
                        || !way.linkPattern().contains(SendingWay.CODE))) {
            throw new Refused("delivery.way.link");
        }
        if (way.keepsDays() < 1 || way.keepsDays() > 365) {
            throw new Refused("delivery.way.keeps");
        }
        if (way.reach().kind() == Reach.Kind.COUNTRIES
                && way.reach().countries().isEmpty()) {
            throw new Refused("delivery.way.countries", way.name());
        }
        store.save(way);
        afterCommit.tell(new WaysChanged());
    }
}
