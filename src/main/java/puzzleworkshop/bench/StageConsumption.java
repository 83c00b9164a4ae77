package puzzleworkshop.bench;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.display.Texts;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.orders.Order;
import puzzleworkshop.supplies.Movement;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.supplies.UseUnit;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/**
 * What a stage takes off the shelf: paper and film for a print made without a print run (a run books its own), tape at
 * masking; box, bag and label at packing. A shelf that is empty by the ledger does not stop the bench; the ledger says that it was short.
 */
@Component
class StageConsumption {

    private static final Map<Stage, List<SupplyKind>> AT = Map.of(
            Stage.PRINT, List.of(SupplyKind.STICKER_PAPER, SupplyKind.LAMINATE),
            Stage.MASK, List.of(SupplyKind.MASKING_TAPE),
            Stage.PACK, List.of(SupplyKind.BOX, SupplyKind.BAG, SupplyKind.LABEL));

    private final Supplies supplies;
    private final Workshop workshop;
    private final Wrapping wrapping;
    private final Texts texts;

    StageConsumption(Supplies supplies, Workshop workshop, Wrapping wrapping, Texts texts) {
        this.texts = texts;
        this.wrapping = wrapping;
        this.supplies = supplies;
        this.workshop = workshop;
    }

    void at(Stage stage, Order order, String who) {
        Optional<Map<SupplyId, BigDecimal>> wrapped = stage == Stage.PACK ? wrapping.of(order) : Optional.empty();
        for (SupplyKind kind : AT.getOrDefault(stage, List.of())) {
            if (wrapped.isEmpty() || kind == SupplyKind.LABEL) {
                supplies.usual(kind).ifPresent(item -> take(item, quantity(item, order), order, who));
            }
        }
        wrapped.ifPresent(boxes ->
                boxes.forEach((id, quantity) -> supplies.find(id).ifPresent(item -> take(item, quantity, order, who))));
    }

    private void take(SupplyItem item, BigDecimal quantity, Order order, String who) {
        if (item.stock().compareTo(quantity) >= 0) {
            supplies.use(item.id().orElseThrow(), quantity, order.ref(), who);
            return;
        }
        supplies.useKnowingly(
                item.id().orElseThrow(), quantity, order.ref(), texts.getTranslation("bench.used", Texts.LOCALE), who);
    }

    /** Puts back what a stage took since the order last began anew; at most one tick of it stands since then. */
    void backFrom(Stage stage, Order order, Instant since, String who) {
        List<SupplyKind> kinds = AT.getOrDefault(stage, List.of());
        Map<SupplyId, BigDecimal> taken = new LinkedHashMap<>();
        supplies.usedFor(order.id()).stream()
                .filter(movement -> movement.at().isAfter(since))
                .filter(movement -> movement.kind() == Movement.Kind.USED || movement.kind() == Movement.Kind.RETURNED)
                .filter(movement -> supplies.find(movement.item())
                        .filter(item -> kinds.contains(item.kind()))
                        .isPresent())
                .forEach(movement ->
                        taken.merge(movement.item(), movement.quantity().negate(), BigDecimal::add));
        taken.forEach((item, quantity) -> {
            if (quantity.signum() > 0) {
                supplies.putBack(item, quantity, order.ref(), who);
            }
        });
    }

    /** What was used for the order since a moment, less what was put back, at what it cost. */
    Money costSince(Order order, Instant since) {
        Money cost = Money.zero(workshop.currency());
        for (Movement movement : supplies.usedFor(order.id())) {
            if (movement.at().isAfter(since)) {
                cost = cost.plus(movement.cost());
            }
        }
        return cost.isNegative() ? Money.zero(workshop.currency()) : cost;
    }

    /** Whether sticker paper for the order left the shelf since a moment. */
    boolean printedSince(Order order, Instant since) {
        return supplies.usedFor(order.id()).stream()
                .filter(movement -> movement.at().isAfter(since))
                .anyMatch(movement -> supplies.find(movement.item())
                        .filter(item -> item.kind() == SupplyKind.STICKER_PAPER)
                        .isPresent());
    }

    private BigDecimal quantity(SupplyItem item, Order order) {
        Size sticker = workshop.tradeNumbers().stickerFor(order.puzzle().finished());
        return switch (item.kind()) {
            case MASKING_TAPE -> byArea(item, sticker, order.quantity());
            case STICKER_PAPER, LAMINATE ->
                item.useUnit() == UseUnit.SHEET
                                && item.width().isPresent()
                                && item.height().isPresent()
                        ? sheets(item, sticker, order.quantity())
                        : byArea(item, sticker, order.quantity());
            default -> BigDecimal.valueOf(order.quantity());
        };
    }

    private static BigDecimal byArea(SupplyItem item, Size sticker, int copies) {
        return item.areaPerUse()
                .map(area -> BigDecimal.valueOf(sticker.area().mm2() * copies / area.mm2())
                        .setScale(3, RoundingMode.CEILING))
                .orElse(BigDecimal.valueOf(copies));
    }

    /** Whole sheets: what a print leaves of its sheet is thrown away. One that is larger than a sheet takes its area. */
    private static BigDecimal sheets(SupplyItem item, Size sticker, int copies) {
        Size sheet = new Size(item.width().orElseThrow(), item.height().orElseThrow());
        int upright = count(sheet, sticker);
        int lying = count(sheet, new Size(sticker.height(), sticker.width()));
        int most = Math.max(upright, lying);
        return most == 0
                ? byArea(item, sticker, copies).setScale(0, RoundingMode.CEILING)
                : BigDecimal.valueOf(Math.ceilDiv(copies, most));
    }

    private static int count(Size sheet, Size sticker) {
        return (int) (Math.floor(sheet.width().mm() / sticker.width().mm())
                * Math.floor(sheet.height().mm() / sticker.height().mm()));
    }
}
