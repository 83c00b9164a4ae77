package puzzleworkshop.insights;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.insights.InsightStore.Row;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.workshop.Stage;

/** What came of orders: read for all of them at once, with the pieces of them that were made again for nothing. */
@Component
class OrderResults {

    private final InsightStore store;
    private final EstimatedPrices prices;

    OrderResults(InsightStore store, EstimatedPrices prices) {
        this.store = store;
        this.prices = prices;
    }

    /**
     * An order and what came of it.
     *
     * @param clocked minutes of its own stages, as far as they were clocked
     * @param hands clocked where it was, else reckoned, its pieces made again included
     * @param laser recorded, else reckoned, its pieces made again included
     */
    record Result(Row row, Outcome outcome, Map<Stage, Minutes> clocked, Minutes hands, Minutes laser) {

        FinishedOrder finished() {
            return new FinishedOrder(
                    row.id(),
                    row.number(),
                    row.customer(),
                    row.finished().orElseThrow(),
                    row.quantity(),
                    row.size(),
                    row.pieces(),
                    outcome,
                    hands,
                    laser,
                    row.mishaps());
        }

        private Result with(List<Result> pieces) {
            if (pieces.isEmpty()) {
                return this;
            }
            Minutes allHands = hands;
            Minutes allLaser = laser;
            List<Outcome.Again> again = new ArrayList<>();
            for (Result piece : pieces) {
                allHands = allHands.plus(piece.hands);
                allLaser = allLaser.plus(piece.laser);
                again.add(new Outcome.Again(new OrderRef(piece.row.id(), piece.row.number()), piece.outcome.actual()));
            }
            return new Result(row, outcome.with(again), clocked, allHands, allLaser);
        }
    }

    /** In the order of the rows. */
    List<Result> of(List<Row> rows) {
        Map<OrderId, List<OrderId>> belonging = store.freePieces(ids(rows));
        List<Row> pieces = belonging.isEmpty()
                ? List.of()
                : store.orders(belonging.values().stream().flatMap(List::stream).toList());
        List<Row> all = new ArrayList<>(rows);
        all.addAll(pieces);
        List<OrderId> ids = ids(all);
        Map<OrderId, Map<Stage, Minutes>> clocked = store.clocked(ids);
        Map<OrderId, Map<SupplyKind, Money>> materials = store.materials(ids);
        Map<OrderId, EstimatedCost> reckoned = prices.of(all);
        Map<OrderId, Result> each = new HashMap<>();
        for (Row row : all) {
            OrderId id = row.id();
            each.put(
                    id,
                    result(
                            row,
                            reckoned.get(id),
                            clocked.getOrDefault(id, Map.of()),
                            materials.getOrDefault(id, Map.of())));
        }
        return rows.stream()
                .map(row -> each.get(row.id())
                        .with(belonging.getOrDefault(row.id(), List.of()).stream()
                                .map(each::get)
                                .toList()))
                .toList();
    }

    private static List<OrderId> ids(Collection<Row> rows) {
        return rows.stream().map(Row::id).toList();
    }

    private static Result result(
            Row row, EstimatedCost price, Map<Stage, Minutes> clocked, Map<SupplyKind, Money> materials) {
        Minutes hands = row.handsLost();
        for (Map.Entry<Stage, EstimatedCost.Work> work : price.stages().entrySet()) {
            hands = hands.plus(
                    clocked.getOrDefault(work.getKey(), work.getValue().minutes()));
        }
        return new Result(
                row,
                Outcome.of(price, took(row, clocked, materials), row.sold()),
                clocked,
                hands,
                row.laser().orElseGet(price::laser));
    }

    private static ActualCost took(Row row, Map<Stage, Minutes> clocked, Map<SupplyKind, Money> materials) {
        Map<CostPart, Money> byPart = new EnumMap<>(CostPart.class);
        materials.forEach((kind, cost) -> partOf(kind).ifPresent(part -> byPart.merge(part, cost, Money::plus)));
        return new ActualCost(
                clocked,
                row.laser(),
                byPart,
                row.materialLost(),
                row.handsLost(),
                row.finished().isPresent());
    }

    private static Optional<CostPart> partOf(SupplyKind kind) {
        return switch (kind) {
            case STICKER_PAPER, LAMINATE, INK -> Optional.of(CostPart.PRINT);
            case MASKING_TAPE, BOX, BAG, LABEL -> Optional.of(CostPart.CONSUMABLES);
            case LENS, FILTER, BLADE, OTHER -> Optional.empty();
        };
    }
}
