package puzzleworkshop.pattern;

/** For whom a puzzle is made; decides what small parts mean for it. */
public enum IntendedAge {
    /** Children under 36 months: small parts are forbidden. */
    UNDER_3,
    /** Three years and older, below six: small parts need the choking warning on the box. */
    FROM_3,
    /** Six years and older. */
    FROM_6,
    /** Grown-ups: not sold as a toy. */
    GROWN_UPS;

    private static final int GROWN_UP_FROM = 14;

    /** From the youngest age in years: below 3, below 6, below 14 (no toy from there on, common practice), above. */
    public static IntendedAge from(int years) {
        if (years < 3) {
            return UNDER_3;
        }
        return years < 6 ? FROM_3 : years < GROWN_UP_FROM ? FROM_6 : GROWN_UPS;
    }
}
