package puzzleworkshop.delivery.labels;

import puzzleworkshop.measure.Refused;

/**
 * A GTIN-13, the number under the bars on goods. Its last digit checks the others: from the right their weights are 3 and 1
 * in turn (GS1 General Specifications, check digit calculations).
 *
 * @param digits thirteen, the last one right
 */
public record Gtin(String digits) {

    private static final int LENGTH = 13;

    public Gtin {
        if (!digits.matches("\\d{" + LENGTH + "}")) {
            throw new Refused("delivery.gtin.length");
        }
        int right = checkDigit(digits.substring(0, LENGTH - 1));
        if (digits.charAt(LENGTH - 1) - '0' != right) {
            throw new Refused("delivery.gtin.check", digits, right);
        }
    }

    /**
     * What somebody typed, blanks and hyphens allowed: thirteen digits, whose last is checked, or the first twelve (the
     * prefix of one's company and a counter), to which the last is computed.
     *
     * @throws Refused when it is neither, or the last of thirteen digits is wrong
     */
    public static Gtin typed(String typed) {
        String digits = typed.replaceAll("[\\s-]", "");
        return new Gtin(digits.matches("\\d{" + (LENGTH - 1) + "}") ? digits + checkDigit(digits) : digits);
    }

    /** The digit that follows these twelve. */
    static int checkDigit(String twelve) {
        int sum = 0;
        for (int i = 0; i < twelve.length(); i++) {
            int weight = (twelve.length() - i) % 2 == 1 ? 3 : 1;
            sum += weight * (twelve.charAt(i) - '0');
        }
        return (10 - sum % 10) % 10;
    }
}
