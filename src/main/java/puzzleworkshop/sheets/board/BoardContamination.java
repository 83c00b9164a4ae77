package puzzleworkshop.sheets.board;

/** What happened to a board before. */
public enum BoardContamination {
    CLEAN(true),
    PAINTED(false),
    /** Wet glue chars and stops a diode beam: never used. */
    WET_GLUE(false),
    /** Nobody knows: treated like the worst. */
    UNKNOWN(false);

    private final boolean fitForCutting;

    BoardContamination(boolean fitForCutting) {
        this.fitForCutting = fitForCutting;
    }

    /** Only a board known to be clean is cut (common practice). */
    public boolean isFitForCutting() {
        return fitForCutting;
    }
}
