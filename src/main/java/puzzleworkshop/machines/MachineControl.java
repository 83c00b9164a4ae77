package puzzleworkshop.machines;

import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;

/**
 * How a machine is told what to do: how it counts, what its program asks the speed in, and whether and how it takes G-code.
 *
 * @param axes how it counts X and Y
 * @param feed what its program asks the speed in
 * @param takesGcode whether it takes G-code as it is
 * @param words how its control wants to be spoken to in G-code
 * @param framePower at which a frame is traced, set by the owner, 0 to {@value #MOST_FRAME_PERCENT} %; at 0 the beam
 *     stays off and the pilot dot is followed
 */
public record MachineControl(MachineAxes axes, FeedUnit feed, boolean takesGcode, BeamWords words, Percent framePower) {

    /** Above this a traced frame may cut or set fire to paper (common practice: far below). */
    public static final int MOST_FRAME_PERCENT = 20;

    /** Nothing asked yet: the commonest axes, no G-code, one hundredth of the power for the frame (common practice). */
    public static final MachineControl USUAL = new MachineControl(
            MachineAxes.USUAL, FeedUnit.MM_PER_MINUTE, false, BeamWords.FOLLOWING_SPEED, Percent.of(1));

    /** @throws Refused when the power of the frame is out of its range */
    public MachineControl {
        if (framePower.isNegative() || framePower.compareTo(Percent.of(MOST_FRAME_PERCENT)) > 0) {
            throw new Refused("cutting.control.frame.range", Percent.of(MOST_FRAME_PERCENT), framePower);
        }
    }
}
