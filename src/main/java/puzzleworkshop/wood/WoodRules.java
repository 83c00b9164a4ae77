package puzzleworkshop.wood;

import puzzleworkshop.measure.Refused;

/**
 * How the owner wants wood to be decided.
 *
 * @param mostPieces room in the rack, in boards and pieces
 * @param weeksAhead looked ahead for what a remainder is worth, 1 to 26
 * @param deliveryWeeks from an order of boards until the next one can be there, 1 to 26
 * @param servicePercent in so many of a hundred courses no blank may stand without a board, 50 to 99
 */
public record WoodRules(int mostPieces, int weeksAhead, int deliveryWeeks, double servicePercent) {

    public WoodRules {
        if (mostPieces < 1 || mostPieces > 100_000) {
            throw new Refused("wood.rules.room");
        }
        if (weeksAhead < 1 || weeksAhead > 26 || deliveryWeeks < 1 || deliveryWeeks > 26) {
            throw new Refused("wood.rules.weeks");
        }
        if (!(servicePercent >= 50 && servicePercent <= 99)) {
            throw new Refused("wood.rules.service");
        }
    }
}
