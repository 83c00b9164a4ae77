package puzzleworkshop.pricing.rates;

/** How prices speak of value added (or sales) tax. */
public enum VatMode {
    /** Not registered: no tax is charged or shown. */
    NONE,
    /** Prices said to the customer hold the tax. */
    INCLUDED,
    /** The tax is added to the prices said. */
    ON_TOP;

    public String textKey() {
        return "pricing.vat." + name();
    }
}
