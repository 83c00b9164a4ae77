package puzzleworkshop.supplies;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
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
        return store.items().stream()
                .map(this::restock)
                .sorted(Comparator.comparing(Restock::isDue).reversed())
                .toList();
    }

    /** What to buy now. */
    @Transactional(readOnly = true)
    public List<Restock> due() {
        return all().stream().filter(Restock::isDue).toList();
    }

    private Restock restock(SupplyItem item) {
        SupplyId id = item.id().orElseThrow();
        Instant now = clock.instant();
        int days = store.firstUse(id)
                .map(first -> Math.clamp(Duration.between(first, now).toDays(), 1, USE_DAYS))
                .orElse(0);
        BigDecimal used = days == 0
                ? BigDecimal.ZERO
                : store.usedSince(id, now.minus(Duration.ofDays(days))).max(BigDecimal.ZERO);
        boolean wasEverThere = store.firstMovement(id)
                .filter(first ->
                        used.signum() > 0 || Duration.between(first, now).toDays() > 0)
                .isPresent();
        List<Movement> bought = store.purchases(id);
        Optional<Movement> last = bought.isEmpty() ? Optional.empty() : Optional.of(bought.getLast());
        return Restock.of(item, used, days, wasEverThere, last);
    }
}
