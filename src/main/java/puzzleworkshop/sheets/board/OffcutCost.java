package puzzleworkshop.sheets.board;

/** What an offcut carries on of the cost of the sheet it came from. */
public enum OffcutCost {
    /** Its full share by area. */
    FULL,
    /** A set percentage of its share by area; the rest goes to the blank. */
    SHARE,
    /** Nothing; the blank carries it all. */
    NOTHING
}
