package puzzleworkshop.supplies;

/** By what a supply is used up. */
public enum UseUnit {
    PIECE,
    SHEET,
    METRE,
    MILLILITRE;

    /** The key of one of it, as in a price by the sheet. */
    public String oneKey() {
        return "supplies.one." + name();
    }

    public String textKey() {
        return "supplies.unit." + name();
    }
}
