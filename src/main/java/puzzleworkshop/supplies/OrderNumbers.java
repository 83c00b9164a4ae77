package puzzleworkshop.supplies;

import java.util.Collection;
import java.util.Map;

/** The numbers by which people know the orders that supplies were used for, as a higher room keeps them. */
public interface OrderNumbers {

    /** By id; an id that is not known is left out. */
    Map<Long, String> of(Collection<Long> orderIds);
}
