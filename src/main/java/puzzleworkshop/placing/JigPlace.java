package puzzleworkshop.placing;

import puzzleworkshop.geometry.align.Similarity;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.pattern.judged.StickingCheck;

/**
 * Where the jig brings a print that is not measured, and what is left when it lies as far off as {@link LearnedPlace} says.
 *
 * @param place from the drawing, turned by quarters, to the bed; never stretched
 * @param spare what is left at the worst, after half the kerf
 */
record JigPlace(Similarity place, Length spare) {

    /**
     * @param turns by how many quarters, clockwise, this print lies turned; two of one size need not lie alike
     * @throws Refused when no board says where the fence lies
     */
    static JigPlace of(LearnedPlace fence, DrawnPrint print, int turns, Length kerf, String machine) {
        UsualSpot spot = fence.spot().orElseThrow(() -> new Refused("placing.jig.unmeasured", machine));
        StickingCheck check = StickingCheck.of(
                print.outline(0), print.finished(), print.overhang(), fence.shift(), fence.turnDegrees());
        return new JigPlace(spot.bring(print.edges(turns)), check.spare().minus(kerf.times(0.5)));
    }
}
