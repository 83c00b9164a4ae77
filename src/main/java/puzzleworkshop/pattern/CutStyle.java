package puzzleworkshop.pattern;

/** How neighbouring pieces meet. */
public enum CutStyle {
    /** Interlocking knobs: the pieces hold together when lifted. */
    KNOBS,
    /** Flowing waves without knobs: pieces cannot slide along each other but lift apart. */
    WAVY,
    /** Straight lines: for small children and for a first try on a new board. */
    STRAIGHT
}
