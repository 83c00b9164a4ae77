package puzzleworkshop.insights;

import java.util.Map;
import java.util.Optional;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Money;
import puzzleworkshop.pricing.cost.CostPart;
import puzzleworkshop.workshop.Stage;

/**
 * What an order took, as far as it was clocked and booked.
 *
 * @param hands by stage, all puzzles together, of the attempt that counts; only stages that were clocked
 * @param laser from start to end of its cuts; empty when none was recorded
 * @param materials booked from the ledger of supplies for what was made well, by part of the price; only parts with a booking
 * @param materialLost thrown away when something went wrong
 * @param handsLost worked on what had to be made again
 * @param finished whether the order has left the workshop
 */
public record ActualCost(
        Map<Stage, Minutes> hands,
        Optional<Minutes> laser,
        Map<CostPart, Money> materials,
        Money materialLost,
        Minutes handsLost,
        boolean finished) {

    public ActualCost {
        hands = Map.copyOf(hands);
        materials = Map.copyOf(materials);
    }
}
