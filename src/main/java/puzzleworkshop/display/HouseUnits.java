package puzzleworkshop.display;

import java.time.ZoneId;
import java.util.Currency;
import puzzleworkshop.measure.UnitSystem;

/** How this workshop shows and types its numbers; answered by the workshop room. */
public interface HouseUnits {

    UnitSystem units();

    Currency currency();

    ZoneId zone();
}
