package puzzleworkshop.supplies;

import java.math.BigDecimal;
import java.math.RoundingMode;
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
    private static final int DAILY_DIGITS = 6;

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
        Duration known = store.firstMovement(id)
                .map(first -> Duration.between(first, now))
                .orElse(Duration.ZERO);
        int days = Math.clamp(known.toDays(), 1, USE_DAYS);
        BigDecimal used = store.usedSince(id, now.minus(Duration.ofDays(days))).max(BigDecimal.ZERO);
        BigDecimal point = ReorderPoint.of(used, days, item.leadDays(), item.spareDays());
        // Something never bought and never used is not missing; something run out is.
        boolean due = used.signum() > 0
                ? item.stock().compareTo(point) <= 0
                : known.toDays() > 0 && item.stock().signum() <= 0;
        int toBuy = due ? ReorderPoint.toBuy(item.stock(), used, days, item) : 0;
        List<Movement> bought = store.purchases(id);
        Optional<Movement> last = bought.isEmpty() ? Optional.empty() : Optional.of(bought.getLast());
        return new Restock(
                item,
                used.divide(BigDecimal.valueOf(days), DAILY_DIGITS, RoundingMode.HALF_UP),
                point,
                toBuy,
                last.flatMap(Movement::supplier),
                last.map(movement ->
                        movement.unitCost().times(item.usePerPurchase()).times((long) toBuy)));
    }
}
