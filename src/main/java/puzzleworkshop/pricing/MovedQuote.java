package puzzleworkshop.pricing;

import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;

/**
 * An open quote whose price or margin would be another one with other rates.
 *
 * @param number of the quote
 * @param toPayNow as it was offered
 * @param toPayThen as it would be offered
 * @param marginThen what would remain of the price offered, at the new rates
 */
public record MovedQuote(String number, Money toPayNow, Money toPayThen, Percent marginThen) {}
