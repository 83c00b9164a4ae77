package puzzleworkshop.wood;

import puzzleworkshop.measure.Money;

/**
 * The past year's blanks decided again from an empty rack, each kind of board by itself, each rule seeing only earlier weeks.
 *
 * @param weeks replayed
 * @param blanks in them
 * @param kinds of board
 * @param nearest by hand: cheapest boards, nearest fit
 * @param here cheapest boards, blanks where this program proposes them: least loss of learned worth
 * @param ahead a plan that also looks ahead when it buys
 * @param weeksLost weeks in which the program's rule paid more than nearest fit
 */
public record Replay(int weeks, int blanks, int kinds, Rule nearest, Rule here, Rule ahead, int weeksLost) {

    /**
     * @param cost of the boards bought; a blank without one counts as much as the dearest board
     * @param stranded blanks that no board gave
     */
    public record Rule(Money cost, int stranded) {}

    /** Negative: the program's rule would have cost more. */
    public Money saved() {
        return nearest.cost().minus(here.cost());
    }
}
