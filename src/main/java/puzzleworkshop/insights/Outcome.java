package puzzleworkshop.insights;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.workshop.Stage;

/**
 * What an order cost and earned against what was reckoned, part by part. Rates are those of the quote, so that the
 * difference shows time, passes, spoilage and material, not a change of rates. A part that was not measured stands as
 * reckoned and says so.
 *
 * @param parts one for each part with cost
 * @param net what it was sold for, without tax: invoices less credit notes, before any invoice the agreed price
 * @param agreed the price without tax that was reckoned with
 * @param again pieces of it made again for nothing, each an order of its own
 */
public record Outcome(Map<CostPart, Compared> parts, Money net, Money agreed, List<Again> again) {

    /** Payable amounts; measured tells whether the actual amount was. */
    public record Compared(Money reckoned, Money actual, boolean measured) {}

    /** A piece made again for nothing: what it cost, as far as it was measured, counts with the order it belongs to. */
    public record Again(OrderRef order, Money cost) {}

    public Outcome {
        parts = new EnumMap<>(parts);
        again = List.copyOf(again);
    }

    /** Compares; a share of the payment fee and postage stand as they were reckoned. */
    static Outcome of(EstimatedCost price, ActualCost took, Money sold) {
        Map<CostPart, Compared> parts = new EnumMap<>(CostPart.class);
        Money zero = Money.zero(price.net().currency());
        for (CostPart part : CostPart.values()) {
            Money reckoned = price.parts().getOrDefault(part, zero);
            Compared compared = switch (part) {
                case HANDS -> hands(price, took, reckoned);
                case MACHINE, OVERHEAD -> byLaser(price, took, reckoned, part);
                case PRINT, CONSUMABLES ->
                    took.materials().containsKey(part)
                            ? new Compared(reckoned, took.materials().get(part).rounded(), true)
                            : new Compared(reckoned, reckoned, false);
                case REJECTS -> rejects(price, took, reckoned);
                case BOARD, FEES -> new Compared(reckoned, reckoned, false);
            };
            if (!compared.reckoned().isZero() || !compared.actual().isZero()) {
                parts.put(part, compared);
            }
        }
        return new Outcome(parts, sold, price.net(), List.of());
    }

    Outcome with(List<Again> pieces) {
        return new Outcome(parts, net, agreed, pieces);
    }

    /** What was thrown away, and the hours worked on it; the laser's time on it is in the laser's own part. */
    private static Compared rejects(EstimatedCost price, ActualCost took, Money reckoned) {
        Money lost =
                took.materialLost().plus(price.wage().times(took.handsLost().toHours()));
        return took.finished() || lost.isPositive()
                ? new Compared(reckoned, lost.rounded(), true)
                : new Compared(reckoned, reckoned, false);
    }

    private static Compared hands(EstimatedCost price, ActualCost took, Money reckoned) {
        Money actual = price.otherHands();
        boolean measured = false;
        for (Map.Entry<Stage, EstimatedCost.Work> work : price.stages().entrySet()) {
            Minutes clocked = took.hands().get(work.getKey());
            actual = actual.plus(
                    clocked == null ? work.getValue().cost() : price.wage().times(clocked.toHours()));
            measured |= clocked != null;
        }
        return measured ? new Compared(reckoned, actual.rounded(), true) : new Compared(reckoned, reckoned, false);
    }

    /** Lines that go by the laser's hour grow and shrink with the time it really took. */
    private static Compared byLaser(EstimatedCost price, ActualCost took, Money reckoned, CostPart part) {
        double estimate = price.laser().value();
        if (took.laser().isEmpty() || estimate <= 0) {
            return new Compared(reckoned, reckoned, false);
        }
        Money zero = Money.zero(reckoned.currency());
        Money actual = price.hourly()
                .getOrDefault(part, zero)
                .times(took.laser().get().value() / estimate)
                .plus(price.fixed().getOrDefault(part, zero));
        return new Compared(reckoned, actual.rounded(), true);
    }

    public Money reckoned() {
        return Money.sum(parts.values().stream().map(Compared::reckoned).toList(), net.currency());
    }

    public Money actual() {
        Money itself = Money.sum(parts.values().stream().map(Compared::actual).toList(), net.currency());
        return itself.plus(Money.sum(again.stream().map(Again::cost).toList(), net.currency()));
    }

    public Money earned() {
        return net.minus(actual());
    }

    public Money reckonedToEarn() {
        return agreed.minus(reckoned());
    }

    /** What was earned of what it was sold for; absent when nothing was, such as after a full refund. */
    public Optional<Percent> margin() {
        return net.isZero() ? Optional.empty() : Optional.of(Percent.share(earned(), net));
    }

    /** Whether anything at all was clocked or booked, or a piece made again. */
    public boolean isMeasured() {
        return !again.isEmpty() || parts.values().stream().anyMatch(Compared::measured);
    }
}
