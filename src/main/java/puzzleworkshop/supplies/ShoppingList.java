package puzzleworkshop.supplies;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** How long supplies last at the rate they were used lately, and what to buy before they run out. */
@Service
public class ShoppingList {

    private static final int USE_DAYS = 60;

    private final SupplyStore store;
    private final Clock clock;

    ShoppingList(SupplyStore store, Clock clock) {
        this.store = store;
        this.clock = clock;
    }

    /** How every supply stands against its use; those to buy first. */
    @Transactional(readOnly = true)
    public List<Restock> all() {
        Instant now = clock.instant();
        Map<SupplyId, SupplyStore.Use> uses = store.uses(now, USE_DAYS);
        Map<SupplyId, Movement> bought = store.lastPurchases();
        return store.items().stream()
                .map(item -> {
                    SupplyId id = item.id().orElseThrow();
                    return restock(item, Optional.ofNullable(uses.get(id)), Optional.ofNullable(bought.get(id)), now);
                })
                .sorted(Comparator.comparing(Restock::isDue).reversed())
                .toList();
    }

    /** What to buy now. */
    @Transactional(readOnly = true)
    public List<Restock> due() {
        return all().stream().filter(Restock::isDue).toList();
    }

    private static Restock restock(
            SupplyItem item, Optional<SupplyStore.Use> use, Optional<Movement> lastBought, Instant now) {
        BigDecimal used = use.map(SupplyStore.Use::used).orElse(BigDecimal.ZERO).max(BigDecimal.ZERO);
        boolean wasEverThere = use.filter(it ->
                        used.signum() > 0 || Duration.between(it.first(), now).toDays() > 0)
                .isPresent();
        return Restock.of(item, used, use.map(SupplyStore.Use::days).orElse(0), wasEverThere, lastBought);
    }
}
