package puzzleworkshop.cutting.settings;

import puzzleworkshop.machines.Machine;
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

    /** All passes together, J/mm. */
    public double lineEnergy() {
        return parameters.lineEnergy(machine.beam());
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
