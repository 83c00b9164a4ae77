package puzzleworkshop.letters;

import java.util.Map;
import puzzleworkshop.orders.Order;

/** What other rooms know of an order that a letter may tell: how it travels, when it can be fetched. Beans add to each other. */
public interface LetterFacts {

    /** Only fields that have something to say. */
    Map<LetterField, String> of(Order order);
}
