package puzzleworkshop.orders;

import java.time.Instant;

/** The customer has seen the picture with its cut lines and wants it so. */
public record Approval(Instant at, String by) {}
