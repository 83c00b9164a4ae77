package puzzleworkshop.pricing.tax;

/**
 * The tax rates of an order's lines: its puzzles (and the discount on them), and what is charged for delivery.
 */
public record VatRates(VatRate puzzles, VatRate shipping) {

    /** What holds unless something else is chosen. */
    public static final VatRates STANDARD = new VatRates(VatRate.STANDARD, VatRate.STANDARD);
}
