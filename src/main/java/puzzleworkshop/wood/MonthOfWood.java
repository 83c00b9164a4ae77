package puzzleworkshop.wood;

import java.time.YearMonth;
import java.util.OptionalDouble;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Money;

/**
 * What wood did in a month.
 *
 * @param bought area that came into the rack other than as offcuts
 * @param used area of the blanks cut for orders
 * @param kept area of offcuts taken into the rack
 * @param thrown area not kept of boards cut, spoiled blanks, and what was given up later
 * @param cost value that what came in carried
 */
public record MonthOfWood(YearMonth month, Area bought, Area used, Area kept, Area thrown, Money cost) {

    /** Share of the wood that left the rack which went into blanks, 0 to 1; empty when none left. */
    public OptionalDouble yield() {
        double gone = used.mm2() + thrown.mm2();
        return gone <= 0 ? OptionalDouble.empty() : OptionalDouble.of(used.mm2() / gone);
    }
}
