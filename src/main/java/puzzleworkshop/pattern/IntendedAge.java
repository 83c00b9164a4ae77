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
    GROWN_UPS
}
