package puzzleworkshop.printing;

/** One print that is still to be made: a copy of an order's picture, counted from 1. */
public record Copy(PrintItem item, int number) {}
