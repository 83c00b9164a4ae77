package puzzleworkshop.insights;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import puzzleworkshop.insights.InsightStore.Row;

/**
 * What orders were reckoned to cost, kept in brief in memory: a price is a page of JSON, and a year has hundreds of them.
 * An order that was changed has another version and is read again.
 */
@Component
class EstimatedPrices {

    private static final int MOST_KEPT = 5_000;

    private record Kept(long version, EstimatedCost reckoned) {}

    private final InsightStore store;
    private final Map<Long, Kept> kept = new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Long, Kept> eldest) {
            return size() > MOST_KEPT;
        }
    };

    EstimatedPrices(InsightStore store) {
        this.store = store;
    }

    /** By the id of the order. */
    Map<Long, EstimatedCost> of(Collection<Row> rows) {
        Map<Long, EstimatedCost> found = new HashMap<>();
        List<Row> missing = new ArrayList<>();
        synchronized (kept) {
            for (Row row : rows) {
                Kept known = kept.get(row.id().value());
                if (known != null && known.version() == row.version()) {
                    found.put(row.id().value(), known.reckoned());
                } else {
                    missing.add(row);
                }
            }
        }
        if (!missing.isEmpty()) {
            Map<Long, EstimatedCost> read =
                    store.reckoned(missing.stream().map(row -> row.id().value()).toList());
            synchronized (kept) {
                missing.forEach(row -> kept.put(
                        row.id().value(),
                        new Kept(row.version(), read.get(row.id().value()))));
            }
            found.putAll(read);
        }
        return found;
    }
}
