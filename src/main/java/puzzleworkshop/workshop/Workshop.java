package puzzleworkshop.workshop;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collections;
import java.util.Currency;
import java.util.Map;
import java.util.Optional;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.HouseUnits;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.UnitSystem;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.runtime.Change;
import puzzleworkshop.runtime.VersionedCache;

/**
 * The workshop's own facts. They are read on every screen and change rarely, so the profile is kept in memory and
 * read again after it was changed here; one program runs one workshop.
 */
@Service
public class Workshop implements HouseUnits {

    private final WorkshopStore store;
    private final AfterCommit afterCommit;
    private final Clock clock;
    private final VersionedCache<Class<WorkshopProfile>, Optional<WorkshopProfile>> known =
            VersionedCache.<Class<WorkshopProfile>, Optional<WorkshopProfile>>ofMost(1)
                    .restingOn(WorkshopChanged.class);
    private final VersionedCache<Class<TradeNumbers>, TradeNumbers> numbers =
            VersionedCache.<Class<TradeNumbers>, TradeNumbers>ofMost(1).restingOn(WorkshopChanged.class);
    private final VersionedCache<Class<StageStandard>, Map<Stage, StageStandard>> standards =
            VersionedCache.<Class<StageStandard>, Map<Stage, StageStandard>>ofMost(1)
                    .restingOn(WorkshopChanged.class);

    Workshop(WorkshopStore store, AfterCommit afterCommit, Clock clock) {
        this.store = store;
        this.afterCommit = afterCommit;
        this.clock = clock;
    }

    /** Told when the profile, the trade numbers or what a stage takes were changed. */
    public record WorkshopChanged() implements Change {}

    /** The profile, or a stand-in with the machine's own currency and zone before the first set-up. */
    public WorkshopProfile profile() {
        return find().orElseGet(() -> WorkshopProfile.named(
                "Puzzle Workshop", Currency.getInstance("EUR"), UnitSystem.MILLIMETRES, ZoneId.systemDefault()));
    }

    @Transactional
    public void save(WorkshopProfile profile) {
        if (profile.name().isBlank()) {
            throw new Refused("workshop.name.missing");
        }
        Currency held = currency();
        try {
            store.saveProfile(profile);
        } catch (DataIntegrityViolationException refused) {
            if (String.valueOf(refused.getMessage()).contains("currency is fixed")) {
                throw new Refused("workshop.currency.fixed", held.getCurrencyCode());
            }
            throw refused;
        }
        afterCommit.tell(new WorkshopChanged());
    }

    public TradeNumbers tradeNumbers() {
        return numbers.get(TradeNumbers.class, store::tradeNumbers);
    }

    @Transactional
    public void save(TradeNumbers numbers) {
        if (!(numbers.softPpi() > 0
                && numbers.softPpi() < numbers.goodPpi()
                && numbers.goodPpi() < numbers.sharpPpi())) {
            throw new Refused("workshop.ppi.order");
        }
        store.saveTradeNumbers(numbers);
        afterCommit.tell(new WorkshopChanged());
    }

    /** One for each stage. */
    public Map<Stage, StageStandard> stageStandards() {
        return standards.get(StageStandard.class, () -> Collections.unmodifiableMap(store.stageStandards()));
    }

    @Transactional
    public void save(StageStandard standard) {
        store.saveStageStandard(standard);
        afterCommit.tell(new WorkshopChanged());
    }

    @Override
    public UnitSystem units() {
        return profile().units();
    }

    @Override
    public Currency currency() {
        return profile().currency();
    }

    @Override
    public ZoneId zone() {
        return profile().zone();
    }

    @Override
    public LocalDate today() {
        return LocalDate.now(clock.withZone(zone()));
    }

    private Optional<WorkshopProfile> find() {
        return known.get(WorkshopProfile.class, store::profile);
    }

    /** Before those who work with the profile look at it again. */
    @EventListener(WorkshopChanged.class)
    @Order(Ordered.HIGHEST_PRECEDENCE)
    void forget() {
        known.forget();
        numbers.forget();
        standards.forget();
    }
}
