package puzzleworkshop.insights;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.CostLine;
import puzzleworkshop.pricing.CostPart;
import puzzleworkshop.pricing.CostUnit;
import puzzleworkshop.pricing.KeptPrice;
import puzzleworkshop.pricing.PriceAnswer;
import puzzleworkshop.workshop.Stage;

/**
 * What an order cost and earned against what was reckoned, part by part. Rates are those of the quote, so that the
 * difference shows time, passes, spoilage and material, not a change of rates. A part that was not measured stands as
 * reckoned and says so.
 *
 * @param parts one for each part with cost
 * @param net price without tax
 */
public record Outcome(Map<CostPart, Compared> parts, Money net) {

    /** Payable amounts; measured tells whether the actual amount was. */
    public record Compared(Money reckoned, Money actual, boolean measured) {}

    public Outcome {
        parts = new EnumMap<>(parts);
    }

    /** Compares; a share of the payment fee and postage stand as they were reckoned. */
    public static Outcome of(KeptPrice kept, Took took) {
        PriceAnswer answer = kept.answer();
        Map<CostPart, Compared> parts = new EnumMap<>(CostPart.class);
        Map<CostPart, Money> shown = answer.costs().shownParts();
        Money zero = Money.zero(answer.net().currency());
        for (CostPart part : CostPart.values()) {
            Money reckoned = shown.getOrDefault(part, zero);
            Compared compared = switch (part) {
                case HANDS -> hands(answer.costs().linesOf(part), took, reckoned);
                case MACHINE, OVERHEAD -> byLaser(kept, answer.costs().linesOf(part), took, reckoned, part);
                case PRINT, CONSUMABLES -> took.materials().containsKey(part)
                        ? new Compared(reckoned, took.materials().get(part).rounded(), true)
                        : new Compared(reckoned, reckoned, false);
                case REJECTS -> rejects(answer.costs().linesOf(CostPart.HANDS), took, reckoned);
                case BOARD, FEES -> new Compared(reckoned, reckoned, false);
            };
            if (!compared.reckoned().isZero() || !compared.actual().isZero()) {
                parts.put(part, compared);
            }
        }
        return new Outcome(parts, answer.net());
    }

    /** What was thrown away, and the hours worked on it; the laser's time on it is in the laser's own part. */
    private static Compared rejects(List<CostLine> hands, Took took, Money reckoned) {
        Money work = hands.isEmpty()
                ? Money.zero(reckoned.currency())
                : hands.getFirst().rate().times(took.handsLost().toHours());
        Money lost = took.materialLost().plus(work);
        return took.finished() || lost.isPositive()
                ? new Compared(reckoned, lost.rounded(), true)
                : new Compared(reckoned, reckoned, false);
    }

    private static Compared hands(List<CostLine> lines, Took took, Money reckoned) {
        Money actual = Money.zero(reckoned.currency());
        boolean measured = false;
        for (CostLine line : lines) {
            Stage stage = stageOf(line);
            if (stage != null && took.hands().containsKey(stage)) {
                actual = actual.plus(line.rate().times(took.hands().get(stage).toHours()));
                measured = true;
            } else {
                actual = actual.plus(line.amount());
            }
        }
        return measured ? new Compared(reckoned, actual.rounded(), true) : new Compared(reckoned, reckoned, false);
    }

    /** Lines that go by the laser's hour grow and shrink with the time it really took. */
    private static Compared byLaser(KeptPrice kept, List<CostLine> lines, Took took, Money reckoned, CostPart part) {
        double estimate = kept.question().cutMinutes().value() * kept.question().quantity();
        if (took.laser().isEmpty() || estimate <= 0) {
            return new Compared(reckoned, reckoned, false);
        }
        double ratio = took.laser().get().value() / estimate;
        Money actual = Money.zero(reckoned.currency());
        for (CostLine line : lines) {
            boolean hourly = part == CostPart.MACHINE || line.unit() == CostUnit.HOUR;
            actual = actual.plus(hourly ? line.amount().times(ratio) : line.amount());
        }
        return new Compared(reckoned, actual.rounded(), true);
    }

    private static Stage stageOf(CostLine line) {
        for (Stage stage : Stage.values()) {
            if (stage.textKey().equals(line.what().key())) {
                return stage;
            }
        }
        return null;
    }

    public Money reckoned() {
        return Money.sum(parts.values().stream().map(Compared::reckoned).toList(), net.currency());
    }

    public Money actual() {
        return Money.sum(parts.values().stream().map(Compared::actual).toList(), net.currency());
    }

    public Money earned() {
        return net.minus(actual());
    }

    public Money reckonedToEarn() {
        return net.minus(reckoned());
    }

    public Percent margin() {
        return Percent.share(earned(), net);
    }

    /** Whether anything at all was clocked or booked. */
    public boolean isMeasured() {
        return parts.values().stream().anyMatch(Compared::measured);
    }
}
