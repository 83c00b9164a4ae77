package puzzleworkshop.delivery.sending;

import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.planning.calendar.WorkingTimes;

/** The ways of sending with their prices and limits; which ways there are and when they leave is set with the hours. */
@Service
public class SendingWays {

    private final SendingStore store;
    private final WorkingTimes times;

    SendingWays(SendingStore store, WorkingTimes times) {
        this.store = store;
        this.times = times;
    }

    /** The usual way first. */
    @Transactional(readOnly = true)
    public List<SendingWay> all() {
        return store.of(times.ways());
    }

    /** The way with this number, or the usual one. */
    @Transactional(readOnly = true)
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
    }
}
