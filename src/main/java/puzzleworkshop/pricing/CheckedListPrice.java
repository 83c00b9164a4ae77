package puzzleworkshop.pricing;

import puzzleworkshop.pricing.rates.ListPrice;

/** A line of the price list and what a typical puzzle of its size would earn at that price. */
public record CheckedListPrice(ListPrice line, PriceAnswer answer) {}
