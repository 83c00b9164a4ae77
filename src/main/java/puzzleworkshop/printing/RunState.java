package puzzleworkshop.printing;

/** How far a run has come. */
public enum RunState {
    /** Laid out; may be changed. */
    PROPOSED,
    /** To be printed as it is. */
    CONFIRMED,
    PRINTED,
    /** Taken apart before it was printed. */
    DISCARDED;

    public boolean isOpen() {
        return this == PROPOSED || this == CONFIRMED;
    }

    public String textKey() {
        return "printing.state." + name();
    }
}
