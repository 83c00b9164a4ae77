package puzzleworkshop.printing;

import puzzleworkshop.measure.OrderId;

/** A print that was booked as good turned out to be no good; told within the transaction that makes it wait again. */
public record PrintSpoiled(OrderId order, int copy, String reason, String who) {}
