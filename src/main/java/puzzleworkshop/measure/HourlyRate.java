package puzzleworkshop.measure;

/**
 * What an hour costs: of a machine, or of hands.
 *
 * @param perHour money for sixty minutes, not rounded
 */
public record HourlyRate(Money perHour) {

    public static HourlyRate of(Money perHour) {
        return new HourlyRate(perHour);
    }

    /** What the given time costs, not rounded. */
    public Money forTime(Minutes time) {
        return perHour.times(time.toHours());
    }
}
