package puzzleworkshop.placing;

import puzzleworkshop.geometry.align.MarkReading;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;

/**
 * How exactly this workshop reads marks, and whether it follows a print that the printer stretched.
 *
 * @param reading standard deviation of a reading along an axis; 0.3 mm by eye with a pilot dot (common practice)
 * @param repeatability how exactly the machines come back to a place
 * @param follow whether a print that is longer or shorter than drawn is cut longer or shorter by as much
 * @param followMost up to this stretch; at most {@value #MOST_STRETCH_PERCENT} %, which is more than paper does
 */
public record PlacingRules(Length reading, Length repeatability, boolean follow, Percent followMost) {

    public static final int MOST_STRETCH_PERCENT = 1;
    /** The uncertainty that is stated holds with this probability. */
    public static final double SURE = 0.999;

    public static final PlacingRules USUAL = new PlacingRules(Length.mm(0.3), Length.mm(0.05), true, Percent.of("0.5"));

    public PlacingRules {
        if (reading.mm() < 0.01 || reading.mm() > 3 || repeatability.mm() < 0 || repeatability.mm() > 3) {
            throw new IllegalArgumentException("Reading errors are 0.01 to 3 mm, a machine's own 0 to 3 mm");
        }
        if (followMost.isNegative() || followMost.compareTo(Percent.of(MOST_STRETCH_PERCENT)) > 0) {
            throw new IllegalArgumentException("A print is followed up to 1 % at most, not " + followMost);
        }
    }

    MarkReading.Expectation expectation() {
        return new MarkReading.Expectation(
                reading.mm(), MOST_STRETCH_PERCENT / 100.0, MarkReading.Expectation.USUAL.mostTurn());
    }

    /** Whether a print stretched so is cut stretched. */
    boolean follows(double stretch) {
        return follow && Math.abs(stretch - 1) <= followMost.asDouble();
    }
}
