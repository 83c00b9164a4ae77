package puzzleworkshop.measure;

/**
 * A feed speed, held in millimetres per second; above zero. Screens show mm/min and mm/s side by side, because a
 * factor of 60 is the classic mistake.
 *
 * @param mmPerSecond millimetres per second
 */
public record Speed(double mmPerSecond) implements Comparable<Speed> {

    public Speed {
        if (!Double.isFinite(mmPerSecond) || mmPerSecond <= 0) {
            throw new IllegalArgumentException("A speed must be above zero, not " + mmPerSecond + " mm/s");
        }
    }

    public static Speed mmPerSecond(double value) {
        return new Speed(value);
    }

    public static Speed mmPerMinute(double value) {
        return new Speed(value / 60);
    }

    public double toMmPerMinute() {
        return mmPerSecond * 60;
    }

    @Override
    public int compareTo(Speed other) {
        return Double.compare(mmPerSecond, other.mmPerSecond);
    }
}
