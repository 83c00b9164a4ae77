package puzzleworkshop.insights;

import java.util.EnumMap;
import java.util.Map;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.pricing.KeptPrice;
import puzzleworkshop.pricing.PriceAnswer;
import puzzleworkshop.pricing.cost.CostLine;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.pricing.cost.CostUnit;
import puzzleworkshop.pricing.cost.StageWork;
import puzzleworkshop.workshop.Stage;

/**
 * What an order was reckoned to take and to cost, in brief: all that is compared with what it took, and small enough to be
 * kept for thousands of orders.
 *
 * @param net price without tax
 * @param parts payable amounts of the cost
 * @param stages minutes of hands by stage, and their exact cost
 * @param otherHands exact cost of hands that belong to no stage
 * @param hourly exact cost that goes by the laser's time, of the laser and of the overhead
 * @param fixed exact cost of these parts that does not
 * @param laser minutes for all puzzles
 * @param wage of an hour of hands; zero when nothing was reckoned for hands
 */
record EstimatedCost(
        Money net,
        Map<CostPart, Money> parts,
        Map<Stage, Work> stages,
        Money otherHands,
        Map<CostPart, Money> hourly,
        Map<CostPart, Money> fixed,
        Minutes laser,
        Money wage) {

    /** Minutes of hands at one stage, for all puzzles, and what they were reckoned to cost. */
    record Work(Minutes minutes, Money cost) {

        private Work plus(Work other) {
            return new Work(minutes.plus(other.minutes), cost.plus(other.cost));
        }
    }

    static EstimatedCost of(KeptPrice kept) {
        PriceAnswer answer = kept.answer();
        Money zero = Money.zero(answer.net().currency());
        Map<Stage, Work> stages = new EnumMap<>(Stage.class);
        for (StageWork work : kept.question().work()) {
            stages.put(work.stage(), new Work(work.forQuantity(kept.question().quantity()), zero));
        }
        Money otherHands = zero;
        Money wage = zero;
        for (CostLine line : answer.costs().linesOf(CostPart.HANDS)) {
            Stage stage = stageOf(line);
            if (stage == null) {
                otherHands = otherHands.plus(line.amount());
            } else {
                stages.merge(stage, new Work(Minutes.ZERO, line.amount()), Work::plus);
                wage = line.rate();
            }
        }
        Map<CostPart, Money> hourly = new EnumMap<>(CostPart.class);
        Map<CostPart, Money> fixed = new EnumMap<>(CostPart.class);
        for (CostPart part : new CostPart[] {CostPart.MACHINE, CostPart.OVERHEAD}) {
            for (CostLine line : answer.costs().linesOf(part)) {
                boolean byTheHour = part == CostPart.MACHINE || line.unit() == CostUnit.HOUR;
                (byTheHour ? hourly : fixed).merge(part, line.amount(), Money::plus);
            }
        }
        return new EstimatedCost(
                answer.net(),
                answer.costs().shownParts(),
                stages,
                otherHands,
                hourly,
                fixed,
                kept.question().cutMinutes().times(kept.question().quantity()),
                wage);
    }

    private static Stage stageOf(CostLine line) {
        for (Stage stage : Stage.values()) {
            if (stage.textKey().equals(line.what().key())) {
                return stage;
            }
        }
        return null;
    }
}
