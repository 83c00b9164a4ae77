package puzzleworkshop.supplies;

/** By what a supply is used up. */
public enum UseUnit {
    PIECE,
    SHEET,
    METRE,
    MILLILITRE;

    public String textKey() {
        return "supplies.unit." + name();
    }
}
