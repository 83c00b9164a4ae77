package puzzleworkshop.pricing.cost;

/** The parts of the price bar, in the order in which money is spent. */
public enum CostPart {
    BOARD,
    PRINT,
    CONSUMABLES,
    MACHINE,
    HANDS,
    REJECTS,
    OVERHEAD,
    FEES;

    /** The key of its name in the texts. */
    public String textKey() {
        return "pricing.part." + name();
    }
}
