package puzzleworkshop.cutting.settings;

import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Speed;

/**
 * What is dialled in on one machine for one kind of board, and how far it can be trusted.
 *
 * @param id given by the store; 0 when nothing is stored yet and the parameters are common practice
 * @param machine whose it is
 * @param board for which
 * @param parameters speed, power, passes, air, gap
 * @param state by the evidence of its trials
 */
public record CutSetting(long id, Machine machine, BoardKind board, CutParameters parameters, SettingState state) {

    private static final double DIFFUSIVITY_MM2_S = 0.16;

    /** All passes together, J/mm. */
    public double lineEnergy() {
        return parameters.lineEnergy(machine.beam());
    }

    /**
     * How deep the heat of the beam goes into the wood beside the cut, by this speed and number of passes: √(4·a·t), the length
     * over which heat spreads in the time that the beam stays over a place (Carslaw and Jaeger, Conduction of Heat in Solids,
     * 2nd edition, 2.5), for wood a = 0.16 mm²/s (Wood Handbook, FPL-GTR-282, chapter 4; from memory). Wood within it is
     * browned and brittle; a model's figure, for comparing settings.
     */
    public Length burntDepth() {
        double seconds = machine.beam().kerf().mm() / parameters.speed().mmPerSecond() * parameters.passes();
        return Length.mm(Math.sqrt(4 * DIFFUSIVITY_MM2_S * seconds));
    }

    public boolean isProven() {
        return state == SettingState.PROVEN;
    }

    public Speed speed() {
        return parameters.speed();
    }

    public int passes() {
        return parameters.passes();
    }
}
