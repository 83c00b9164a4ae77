package puzzleworkshop.cutting.settings;

import java.util.List;
import java.util.OptionalDouble;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.machines.Beam;

/**
 * Between which line energies the right one lies, by the trials in a given number of passes with the gap right and the
 * air on: above the most that did not go through, and not above the least that did and is more than that.
 *
 * @param notThrough the best 'not through' or 'partly', J/mm; none before the first
 * @param through the least 'through' above it, J/mm; none before the first
 */
record EnergyInterval(OptionalDouble notThrough, OptionalDouble through) {

    static EnergyInterval of(List<Trial> trials, Beam beam, int passes) {
        OptionalDouble low = trials.stream()
                .filter(trial -> counts(trial, passes) && trial.finding().result() != Result.THROUGH)
                .mapToDouble(trial -> trial.parameters().lineEnergy(beam))
                .max();
        double floor = low.orElse(0);
        OptionalDouble high = trials.stream()
                .filter(trial -> counts(trial, passes) && trial.finding().result() == Result.THROUGH)
                .mapToDouble(trial -> trial.parameters().lineEnergy(beam))
                .filter(energy -> energy > floor)
                .min();
        return new EnergyInterval(low, high);
    }

    boolean holds(double energy) {
        return energy > notThrough.orElse(0) && energy <= through.orElse(Double.MAX_VALUE) + 1e-9;
    }

    private static boolean counts(Trial trial, int passes) {
        return trial.parameters().passes() == passes && trial.parameters().airAssist() && trial.gapWasRight();
    }
}
