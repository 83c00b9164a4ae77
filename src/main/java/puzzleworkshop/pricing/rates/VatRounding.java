package puzzleworkshop.pricing.rates;

/** Where tax is rounded to the minor unit. Both are in use; an invoice says which one it was. */
public enum VatRounding {
    BY_LINE,
    BY_TOTAL;

    public String textKey() {
        return "pricing.vat-rounding." + name();
    }
}
