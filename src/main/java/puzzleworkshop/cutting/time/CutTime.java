package puzzleworkshop.cutting.time;

import java.util.List;
import puzzleworkshop.cutfiles.writing.CutPace;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Motion;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Minutes;

/**
 * What a cut takes, in its parts, before the machine's own correction ({@link MachineRatio}).
 *
 * @param cutting beam on, all passes
 * @param moves between paths and back to the first for the next pass, beam off
 * @param pauses between passes
 * @param setUp placing, focusing, tracing the frame
 */
public record CutTime(Minutes cutting, Minutes moves, Minutes pauses, Minutes setUp) {

    /** Paths nearer to each other than this need no move. */
    private static final double SAME_PLACE_MM = 0.01;

    /**
     * Time for the paths in the given order. Every pass runs all paths and then returns to the first; the head rests at
     * the start and the end of every path. Speed is the setting's, at most the machine's.
     *
     * @throws IllegalArgumentException when there is no path
     */
    public static CutTime estimate(List<CurvePath> paths, Machine machine, CutParameters parameters) {
        if (paths.isEmpty()) {
            throw new IllegalArgumentException("There is nothing to cut");
        }
        Motion motion = machine.motion();
        double speed =
                Math.min(parameters.speed().mmPerSecond(), motion.maxCut().mmPerSecond());
        PathPace pace = new PathPace(motion, speed);
        double cutting = 0;
        double moves = 0;
        Point last = paths.getFirst().start();
        for (CurvePath path : paths) {
            moves += moveSeconds(last, path.start(), motion);
            cutting += pace.seconds(path);
            last = path.end();
        }
        int passes = parameters.passes();
        double returns = (passes - 1) * moveSeconds(last, paths.getFirst().start(), motion);
        return new CutTime(
                Minutes.ofSeconds(cutting * passes),
                Minutes.ofSeconds(moves * passes + returns),
                machine.passPause().times(passes - 1.0),
                machine.setUp());
    }

    public static CutTime estimate(List<CurvePath> paths, CutSetting setting) {
        return estimate(paths, setting.machine(), setting.parameters());
    }

    /**
     * How fast lines are cut, for the heat that they leave in a board: the mean over these lines, slower than what is dialled
     * in by what bends and corners take.
     */
    public static CutPace pace(List<CurvePath> lines, Machine machine, CutParameters parameters, Length thickness) {
        CutTime time = estimate(lines, machine, parameters);
        double length = lines.stream().mapToDouble(CurvePath::lengthMm).sum();
        double mean = length * parameters.passes() / (time.cutting().toSeconds());
        return new CutPace(
                mean,
                machine.motion().maxTravel().mmPerSecond(),
                parameters.passes(),
                machine.passPause().toSeconds(),
                parameters.passEnergy(machine.beam()),
                thickness.mm());
    }

    /** From pressing start to the last line: what a stopwatch on the machine reads, without set-up. */
    public Minutes running() {
        return cutting.plus(moves).plus(pauses);
    }

    public Minutes total() {
        return running().plus(setUp);
    }

    private static double moveSeconds(Point from, Point to, Motion motion) {
        double distance = from.distanceTo(to);
        return distance <= SAME_PLACE_MM
                ? 0
                : PathPace.straightSeconds(distance, motion.maxTravel().mmPerSecond(), motion.acceleration());
    }
}
