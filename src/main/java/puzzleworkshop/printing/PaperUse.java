package puzzleworkshop.printing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.printing.media.PrintMedium;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyId;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;

/**
 * What a run takes from the shelf: sticker paper and laminate by the area of its sheets, shared among its orders by the
 * area of their stickers, so that waste is carried by those who made it necessary.
 */
final class PaperUse {

    private static final int DIGITS = 6;

    private final Supplies supplies;

    PaperUse(Supplies supplies) {
        this.supplies = supplies;
    }

    /** Sticker paper and laminate, those of them that are kept as supplies. */
    List<SupplyItem> of(PrintMedium medium) {
        List<SupplyItem> items = new ArrayList<>();
        pick(medium.sticker(), SupplyKind.STICKER_PAPER).ifPresent(items::add);
        pick(medium.laminate(), SupplyKind.LAMINATE).ifPresent(items::add);
        return items;
    }

    private Optional<SupplyItem> pick(Optional<SupplyId> named, SupplyKind kind) {
        return named.isPresent() ? supplies.find(named.get()) : supplies.usual(kind);
    }

    /** @throws Refused when something would meet the laser that must not: PVC, wet glue, or nobody knows */
    void requireFitForLaser(PrintMedium medium) {
        List<Sentence> forbidden = supplies.forbiddenAtLaser(
                of(medium).stream().flatMap(item -> item.id().stream()).toList());
        if (!forbidden.isEmpty()) {
            throw new Refused(forbidden.getFirst());
        }
    }

    /**
     * Books what a run has used up.
     *
     * @param although why it is booked even when the shelf holds less; empty refuses that
     */
    void book(PrintRun run, Optional<String> although, String who) {
        for (SupplyItem item : of(run.medium())) {
            BigDecimal whole = quantity(item, run.paper().mm2(), run.sheets());
            for (Map.Entry<OrderRef, BigDecimal> share : shares(run, whole).entrySet()) {
                if (share.getValue().signum() > 0) {
                    SupplyId id = item.id().orElseThrow();
                    if (although.isPresent()) {
                        supplies.useKnowingly(id, share.getValue(), share.getKey(), although.get(), who);
                    } else {
                        supplies.use(id, share.getValue(), share.getKey(), who);
                    }
                }
            }
        }
    }

    /** Books sheets (or a length of roll as a share of the run) that were spoiled in the printer. */
    void spoil(BookingKey key, PrintRun run, int sheets, String reason, String who) {
        pick(run.medium().sticker(), SupplyKind.STICKER_PAPER)
                .ifPresent(item -> supplies.spoil(
                        key,
                        item.id().orElseThrow(),
                        quantity(item, run.sheetSize().area().mm2() * sheets, sheets),
                        Optional.empty(),
                        reason,
                        who));
    }

    /** In use units: by area where the supply covers one, else by the sheet. */
    static BigDecimal quantity(SupplyItem item, double areaMm2, int sheets) {
        return item.areaPerUse()
                .map(area -> BigDecimal.valueOf(areaMm2 / area.mm2()).setScale(DIGITS, RoundingMode.HALF_UP))
                .orElse(BigDecimal.valueOf(sheets));
    }

    /** The whole quantity by order; adds up exactly, the last one takes the rounding. */
    static Map<OrderRef, BigDecimal> shares(PrintRun run, BigDecimal whole) {
        Map<OrderRef, Double> areas = new LinkedHashMap<>();
        run.laid()
                .forEach(item -> areas.merge(item.order(), item.sticker().area().mm2(), Double::sum));
        double all = areas.values().stream().mapToDouble(Double::doubleValue).sum();
        Map<OrderRef, BigDecimal> shares = new LinkedHashMap<>();
        BigDecimal given = BigDecimal.ZERO;
        double areaSoFar = 0;
        for (Map.Entry<OrderRef, Double> entry : areas.entrySet()) {
            areaSoFar += entry.getValue();
            BigDecimal upTo =
                    whole.multiply(BigDecimal.valueOf(areaSoFar / all)).setScale(DIGITS, RoundingMode.HALF_UP);
            if (shares.size() == areas.size() - 1) {
                upTo = whole;
            }
            shares.put(entry.getKey(), upTo.subtract(given));
            given = upTo;
        }
        return shares;
    }
}
