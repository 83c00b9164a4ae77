package puzzleworkshop.workshop;

import java.time.ZoneId;
import java.util.Currency;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.HouseUnits;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.UnitSystem;

/**
 * The workshop's own facts. They are read on every screen and change rarely, so the profile is kept in memory and
 * read again after it was changed here; one program runs one workshop.
 */
@Service
public class Workshop implements HouseUnits {

    private final WorkshopStore store;
    private final AtomicReference<WorkshopProfile> known = new AtomicReference<>();

    Workshop(WorkshopStore store) {
        this.store = store;
    }

    /** Whether the first set-up was done. */
    public boolean isSetUp() {
        return find().isPresent();
    }

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
        known.set(null);
    }

    public TradeNumbers tradeNumbers() {
        return store.tradeNumbers();
    }

    @Transactional
    public void save(TradeNumbers numbers) {
        if (!(numbers.softPpi() > 0
                && numbers.softPpi() < numbers.goodPpi()
                && numbers.goodPpi() < numbers.sharpPpi())) {
            throw new Refused("workshop.ppi.order");
        }
        store.saveTradeNumbers(numbers);
    }

    /** One for each stage. */
    public Map<Stage, StageStandard> stageStandards() {
        return store.stageStandards();
    }

    @Transactional
    public void save(StageStandard standard) {
        store.saveStageStandard(standard);
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

    private Optional<WorkshopProfile> find() {
        WorkshopProfile profile = known.get();
        if (profile == null) {
            profile = store.profile().orElse(null);
            known.set(profile);
        }
        return Optional.ofNullable(profile);
    }
}
