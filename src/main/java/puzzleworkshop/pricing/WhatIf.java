package puzzleworkshop.pricing;

import java.util.Optional;
import puzzleworkshop.measure.Percent;

/**
 * Something tried out: nothing of it is kept.
 *
 * @param margin wanted instead of the rule's method
 * @param passes factor on the laser's time: 2 for twice as many passes
 * @param rejectsFactor factor on every stage's share of rejects, capped below 100 %
 */
public record WhatIf(Optional<Percent> margin, double passes, double rejectsFactor) {

    public static WhatIf nothing() {
        return new WhatIf(Optional.empty(), 1, 1);
    }
}
