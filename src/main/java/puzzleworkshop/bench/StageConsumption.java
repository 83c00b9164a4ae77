package puzzleworkshop.bench;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Money;
import puzzleworkshop.orders.Order;
import puzzleworkshop.supplies.Movement;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/**
 * What a stage takes off the shelf: tape at masking; box, bag and label at packing. Paper and film are booked with the
 * print run. A shelf that is empty by the ledger does not stop the bench; the ledger says that it was short.
 */
@Component
class StageConsumption {

    private static final Map<Stage, List<SupplyKind>> AT = Map.of(
            Stage.MASK, List.of(SupplyKind.MASKING_TAPE),
            Stage.PACK, List.of(SupplyKind.BOX, SupplyKind.BAG, SupplyKind.LABEL));

    private final Supplies supplies;
    private final Workshop workshop;

    StageConsumption(Supplies supplies, Workshop workshop) {
        this.supplies = supplies;
        this.workshop = workshop;
    }

    void at(Stage stage, Order order, String who) {
        for (SupplyKind kind : AT.getOrDefault(stage, List.of())) {
            supplies.usual(kind).ifPresent(item -> take(item, order, who));
        }
    }

    private void take(SupplyItem item, Order order, String who) {
        BigDecimal quantity = quantity(item, order);
        if (item.stock().compareTo(quantity) >= 0) {
            supplies.use(item.id().orElseThrow(), quantity, order.id().value(), who);
            return;
        }
        supplies.useKnowingly(item.id().orElseThrow(), quantity, order.id().value(), "used at the bench", who);
    }

    void backFrom(Stage stage, Order order, String who) {
        for (SupplyKind kind : AT.getOrDefault(stage, List.of())) {
            supplies.usual(kind)
                    .ifPresent(item -> supplies.putBack(
                            item.id().orElseThrow(),
                            quantity(item, order),
                            order.id().value(),
                            who));
        }
    }

    /** What was used for the order since a moment, less what was put back, at what it cost. */
    Money costSince(Order order, Instant since) {
        Money cost = Money.zero(workshop.currency());
        for (Movement movement : supplies.usedFor(order.id().value())) {
            if (movement.at().isAfter(since)) {
                cost = cost.plus(movement.cost());
            }
        }
        return cost.isNegative() ? Money.zero(workshop.currency()) : cost;
    }

    /** Whether sticker paper for the order left the shelf since a moment. */
    boolean printedSince(Order order, Instant since) {
        return supplies.usedFor(order.id().value()).stream()
                .filter(movement -> movement.at().isAfter(since))
                .anyMatch(movement -> supplies.find(movement.item())
                        .filter(item -> item.kind() == SupplyKind.STICKER_PAPER)
                        .isPresent());
    }

    private BigDecimal quantity(SupplyItem item, Order order) {
        if (item.kind() == SupplyKind.MASKING_TAPE && item.areaPerUse().isPresent()) {
            Area print = workshop.tradeNumbers()
                    .stickerFor(order.puzzle().finished())
                    .area();
            double uses =
                    print.mm2() * order.quantity() / item.areaPerUse().get().mm2();
            return BigDecimal.valueOf(uses).setScale(3, RoundingMode.CEILING);
        }
        return BigDecimal.valueOf(order.quantity());
    }
}
