package puzzleworkshop.measure;

/**
 * A length, held in millimetres. May be negative only as a difference of two lengths; must be finite.
 *
 * <p>One inch is 25.4 mm exactly (international yard and pound agreement, 1959).
 *
 * @param mm millimetres
 */
public record Length(double mm) implements Comparable<Length> {

    public static final double MM_PER_INCH = 25.4;
    public static final Length ZERO = new Length(0);

    public Length {
        if (!Double.isFinite(mm)) {
            throw new IllegalArgumentException("A length must be a finite number of millimetres, not " + mm);
        }
    }

    public static Length mm(double mm) {
        return new Length(mm);
    }

    public static Length inches(double inches) {
        return new Length(inches * MM_PER_INCH);
    }

    public double toInches() {
        return mm / MM_PER_INCH;
    }

    public Length plus(Length other) {
        return new Length(mm + other.mm);
    }

    public Length minus(Length other) {
        return new Length(mm - other.mm);
    }

    public Length times(double factor) {
        return new Length(mm * factor);
    }

    public Area times(Length other) {
        return new Area(mm * other.mm);
    }

    public boolean isPositive() {
        return mm > 0;
    }

    @Override
    public int compareTo(Length other) {
        return Double.compare(mm, other.mm);
    }
}
