package puzzleworkshop.papers;

/** Which issued paper. */
public record InvoiceId(long value) {}
