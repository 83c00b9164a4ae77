package puzzleworkshop.pricing.cost;

/** What the quantity of a cost line counts. */
public enum CostUnit {
    PIECE,
    HOUR,
    SQUARE_METRE,
    MILLILITRE,
    ORDER,
    /** A share of an amount: the quantity is a fraction, the rate the amount it is taken of. */
    SHARE;

    public String textKey() {
        return "pricing.unit." + name();
    }
}
