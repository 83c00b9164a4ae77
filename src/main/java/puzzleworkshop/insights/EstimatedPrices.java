package puzzleworkshop.insights;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import puzzleworkshop.insights.InsightStore.Row;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.runtime.VersionedCache;

/**
 * What orders were reckoned to cost, kept in brief in memory: a price is a page of JSON, and a year has hundreds of them.
 * An order that was changed has another version and is read again.
 */
@Component
class EstimatedPrices {

    private static final int MOST_KEPT = 5_000;

    private record Asked(OrderId order, long version) {}

    private final InsightStore store;
    private final VersionedCache<Asked, EstimatedCost> kept = VersionedCache.ofMost(MOST_KEPT);

    EstimatedPrices(InsightStore store) {
        this.store = store;
    }

    /** By the id of the order. */
    Map<OrderId, EstimatedCost> of(Collection<Row> rows) {
        List<Asked> asked =
                rows.stream().map(row -> new Asked(row.id(), row.version())).toList();
        Map<OrderId, EstimatedCost> found = new HashMap<>();
        kept.getAll(asked, this::read).forEach((of, reckoned) -> found.put(of.order(), reckoned));
        return found;
    }

    private Map<Asked, EstimatedCost> read(Collection<Asked> missing) {
        Map<OrderId, EstimatedCost> read =
                store.reckoned(missing.stream().map(Asked::order).toList());
        Map<Asked, EstimatedCost> answers = new HashMap<>();
        missing.stream()
                .filter(asked -> read.containsKey(asked.order()))
                .forEach(asked -> answers.put(asked, read.get(asked.order())));
        return answers;
    }
}
