package puzzleworkshop.cutting.settings;

import puzzleworkshop.machines.Beam;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Speed;

/**
 * What is dialled in for a cut.
 *
 * @param speed of the head with the beam on
 * @param power share of the machine's power, above 0 to 100 %
 * @param passes how often every line is gone over, 1 to 20
 * @param airAssist whether air blows into the cut
 * @param gap lens to work
 */
public record CutParameters(Speed speed, Percent power, int passes, boolean airAssist, Length gap) {

    public static final int MOST_PASSES = 20;

    public CutParameters {
        if (power.asDouble() <= 0 || power.asDouble() > 1) {
            throw new IllegalArgumentException("Power is above 0 and at most 100 %, not " + power.hundredths());
        }
        if (passes < 1 || passes > MOST_PASSES) {
            throw new IllegalArgumentException("Between 1 and " + MOST_PASSES + " passes, not " + passes);
        }
        if (gap.mm() < 0) {
            throw new IllegalArgumentException("A gap is not negative");
        }
    }

    /**
     * Energy put into each millimetre of line, all passes together: P · power% · passes / speed, in J/mm. By
     * definition; 20 W at 100 % and 5 mm/s (300 mm/min) in one pass is 4 J/mm.
     */
    public double lineEnergy(Beam beam) {
        return passEnergy(beam) * passes;
    }

    /** Line energy of one pass, J/mm. */
    public double passEnergy(Beam beam) {
        return beam.powerWatts() * power.asDouble() / speed.mmPerSecond();
    }

    public CutParameters withGap(Length newGap) {
        return new CutParameters(speed, power, passes, airAssist, newGap);
    }

    public CutParameters withPasses(int newPasses) {
        return new CutParameters(speed, power, newPasses, airAssist, gap);
    }
}
