package puzzleworkshop.pattern.ui;

import java.util.List;
import java.util.Optional;
import puzzleworkshop.cutfiles.writing.CutPace;
import puzzleworkshop.measure.Length;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.PatternSpec;

/** What a pattern drawn without an order would take and cost, and the way from it to an order; the room of offers answers. */
public interface SketchDesk {

    /**
     * @param laser time at the laser for one, absent where there is no machine
     * @param price what a customer would pay for one, absent where it cannot be worked out
     * @param burntMm how deep the heat goes into the wood beside the cut, by the setting of the machine
     * @param pace of the cut by that setting
     * @param grade of the board that was priced
     * @param complaints why not, in sentences
     */
    record Priced(
            Optional<String> laser,
            Optional<String> price,
            Optional<Double> burntMm,
            Optional<CutPace> pace,
            String grade,
            List<String> complaints) {}

    /** Width of the cut of the machine that would cut it; none while there is no machine. */
    Optional<Length> kerf();

    /** Takes up to a second: call it off the screen's thread. */
    Priced price(PatternSpec spec, IntendedAge age);

    /** Opens a new order with this pattern filled in. */
    void order(PatternSpec spec, IntendedAge age);
}
