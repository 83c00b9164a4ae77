package puzzleworkshop.supplies;

/** What a supply is for. */
public enum SupplyKind {
    STICKER_PAPER(true),
    LAMINATE(true),
    MASKING_TAPE(true),
    INK(false),
    BOX(false),
    BAG(false),
    LABEL(false),
    LENS(false),
    FILTER(false),
    BLADE(false),
    OTHER(false);

    private final boolean underLaser;

    SupplyKind(boolean underLaser) {
        this.underLaser = underLaser;
    }

    /** Whether it lies on the board while it is cut. */
    public boolean isUnderLaser() {
        return underLaser;
    }

    public String textKey() {
        return "supplies.kind." + name();
    }
}
