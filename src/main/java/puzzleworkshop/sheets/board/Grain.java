package puzzleworkshop.sheets.board;

/** Which way the face grain runs in the drawing of a sheet. */
public enum Grain {
    /** None to be seen, or it does not matter. */
    NONE,
    ALONG_WIDTH,
    ALONG_HEIGHT
}
