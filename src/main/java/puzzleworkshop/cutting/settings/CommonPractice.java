package puzzleworkshop.cutting.settings;

import java.util.Locale;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Speed;

/**
 * Where to begin with a board that nobody has cut here yet, and how a line energy is dialled in. All numbers are common
 * practice: 4 J/mm for 3 mm craft ply (20 W, 100 %, 300 mm/min, one pass), in proportion to the thickness; construction
 * ply takes 1.4 times as much for its glue lines, general ply 1.15 times.
 */
public final class CommonPractice {

    static final double CRAFT_JOULES_PER_MM2 = 4.0 / 3.0;
    static final double CONSTRUCTION_FACTOR = 1.4;
    static final double GENERAL_FACTOR = 1.15;
    /** More than this in one pass chars: the next pass takes the rest. */
    static final double MOST_JOULES_IN_A_PASS = 6;
    /** Below this the wood burns beside the cut rather than in it: rather one more pass. */
    public static final Speed SLOWEST = Speed.mmPerMinute(80);

    private CommonPractice() {}

    /** Line energy in J/mm that should go through a board of this kind. */
    public static double energyFor(BoardKind board) {
        double craft = CRAFT_JOULES_PER_MM2 * board.thickness().mm();
        return switch (board.grade().toUpperCase(Locale.ROOT)) {
            case "CONSTRUCTION" -> craft * CONSTRUCTION_FACTOR;
            case "GENERAL" -> craft * GENERAL_FACTOR;
            default -> craft;
        };
    }

    public static int passesFor(double energy) {
        return (int) Math.clamp(Math.ceil(energy / MOST_JOULES_IN_A_PASS - 1e-9), 1, CutParameters.MOST_PASSES);
    }

    public static CutParameters parametersFor(Machine machine, BoardKind board) {
        double energy = energyFor(board);
        return dial(machine, energy, passesFor(energy), machine.beam().lensGap());
    }

    /**
     * Dials a line energy in: full power, as fast as it then may be, whole 5 mm/min; less power only where the machine
     * would have to run faster than it can; more passes only where it would have to creep. Air on.
     *
     * @param energy J/mm over all passes, above zero
     * @param passes at least as many
     */
    public static CutParameters dial(Machine machine, double energy, int passes, Length gap) {
        double watts = machine.beam().powerWatts();
        int n = passes;
        while (n < CutParameters.MOST_PASSES && watts * n / energy < SLOWEST.mmPerSecond()) {
            n++;
        }
        double fastest = machine.motion().maxCut().mmPerSecond();
        double speed = watts * n / energy;
        if (speed > fastest) {
            double percent = Math.max(0.1, Math.round(fastest * energy / (watts * n) * 1000) / 10.0);
            return new CutParameters(Speed.mmPerSecond(fastest), Percent.of(Double.toString(percent)), n, true, gap);
        }
        return new CutParameters(Speed.mmPerMinute(rounded(speed * 60, fastest * 60)), Percent.of(100), n, true, gap);
    }

    private static double rounded(double mmPerMinute, double most) {
        double step = mmPerMinute >= 100 ? 5 : mmPerMinute >= 20 ? 1 : 0.1;
        double whole = Math.round(mmPerMinute / step) * step;
        return Math.min(most, whole > 0 ? whole : mmPerMinute);
    }
}
