package puzzleworkshop.cutfiles.writing;

/**
 * How fast lines are cut, as far as it decides how warm the board is where the beam arrives.
 *
 * @param cutMmPerS of the head along the lines with the beam on, above zero; the mean, bends and corners included
 * @param travelMmPerS between lines, above zero
 * @param passes how often all lines are gone over
 * @param pauseS waiting between two passes
 * @param joulesPerMm of the beam for each millimetre of line in one pass
 * @param thicknessMm of the board
 */
public record CutPace(
        double cutMmPerS, double travelMmPerS, int passes, double pauseS, double joulesPerMm, double thicknessMm) {

    /** 20 W on 3 mm plywood: 300 mm/min in one pass; and the head moves at 6,000 mm/min between lines. Common practice. */
    public static final CutPace USUAL = new CutPace(5, 100, 1, 0, 4, 3);

    public CutPace {
        if (!(cutMmPerS > 0) || !(travelMmPerS > 0) || passes < 1 || pauseS < 0 || !(thicknessMm > 0)) {
            throw new IllegalArgumentException("No pace to cut at: " + cutMmPerS + " and " + travelMmPerS + " mm/s, "
                    + passes + " passes, " + pauseS + " s between them, board of " + thicknessMm + " mm");
        }
    }
}
