package puzzleworkshop.delivery.returns;

import puzzleworkshop.measure.OrderId;
import puzzleworkshop.runtime.Change;

/** Told after a complaint or what was decided about it is safe in the database. */
public record ComplaintChanged(OrderId order) implements Change {}
