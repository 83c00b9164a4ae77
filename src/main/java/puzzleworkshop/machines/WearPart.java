package puzzleworkshop.machines;

import puzzleworkshop.measure.Money;

/**
 * Something on a machine that is used up by the hour: a lens, a filter, a honeycomb bed.
 *
 * @param name what it is called in the workshop
 * @param price of one
 * @param lifeHours machine hours until it is replaced, above zero
 */
public record WearPart(String name, Money price, double lifeHours) {

    public WearPart {
        if (name == null || name.isBlank()) {
            throw new IllegalArgumentException("A wear part needs a name");
        }
        if (price.isNegative() || !(lifeHours > 0) || !Double.isFinite(lifeHours)) {
            throw new IllegalArgumentException("A wear part has a price of zero or more and a life above zero hours");
        }
    }
}
