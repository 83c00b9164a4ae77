package puzzleworkshop.wood;

import puzzleworkshop.measure.Money;

/**
 * The past year's blanks decided again from an empty rack: looking ahead, which saw only earlier weeks, against nearest fit.
 *
 * @param weeks replayed
 * @param blanks in them
 * @param weeksLost weeks in which looking ahead paid more than nearest fit
 */
public record Replay(int weeks, int blanks, Money nearest, Money ahead, int weeksLost) {

    /** Negative: it would have cost more. */
    public Money saved() {
        return nearest.minus(ahead);
    }
}
