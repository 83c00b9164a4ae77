package puzzleworkshop.measure;

/** How lengths are shown and typed; inside, everything is millimetres. */
public enum UnitSystem {
    MILLIMETRES("mm", 1, 1),
    INCHES("in", Length.MM_PER_INCH, 3);

    private final String symbol;
    private final double mmPerUnit;
    private final int digits;

    UnitSystem(String symbol, double mmPerUnit, int digits) {
        this.symbol = symbol;
        this.mmPerUnit = mmPerUnit;
        this.digits = digits;
    }

    public String symbol() {
        return symbol;
    }

    /** Digits after the point that a person wants to see. */
    public int digits() {
        return digits;
    }

    public double valueOf(Length length) {
        return length.mm() / mmPerUnit;
    }

    public Length length(double value) {
        return Length.mm(value * mmPerUnit);
    }
}
