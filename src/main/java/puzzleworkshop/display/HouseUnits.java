package puzzleworkshop.display;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Currency;
import puzzleworkshop.measure.UnitSystem;

/** How this workshop shows and types its numbers; answered by the workshop room. */
public interface HouseUnits {

    UnitSystem units();

    Currency currency();

    ZoneId zone();

    /** The day it is in that zone. */
    LocalDate today();
}
