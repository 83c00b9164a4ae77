package puzzleworkshop.measure;

/**
 * An area, held in square millimetres; finite and not negative.
 *
 * @param mm2 square millimetres
 */
public record Area(double mm2) implements Comparable<Area> {

    public static final Area ZERO = new Area(0);

    public Area {
        if (!Double.isFinite(mm2) || mm2 < 0) {
            throw new IllegalArgumentException("An area must be a finite number of mm², not " + mm2);
        }
    }

    public static Area mm2(double mm2) {
        return new Area(mm2);
    }

    public double toSquareCentimetres() {
        return mm2 / 100;
    }

    public double toSquareMetres() {
        return mm2 / 1e6;
    }

    public Area plus(Area other) {
        return new Area(mm2 + other.mm2);
    }

    /** The difference; a result below zero by rounding alone (down to -1e-6 mm²) counts as zero. */
    public Area minus(Area other) {
        double difference = mm2 - other.mm2;
        return new Area(difference < 0 && difference > -1e-6 ? 0 : difference);
    }

    public Area times(double factor) {
        return new Area(mm2 * factor);
    }

    /** This area as a share of another; zero when the other is zero. */
    public double shareOf(Area whole) {
        return whole.mm2 == 0 ? 0 : mm2 / whole.mm2;
    }

    @Override
    public int compareTo(Area other) {
        return Double.compare(mm2, other.mm2);
    }
}
