package puzzleworkshop.placing;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.measure.Length;
import puzzleworkshop.orders.Order;
import puzzleworkshop.pattern.judged.StickingCheck;
import puzzleworkshop.workshop.TradeNumbers;

/** What the measured places of a machine teach: where prints usually come to lie, in its fence and laid by hand. */
@Service
public class LearnedPlaces {

    /** Older places no longer speak for how this workshop sticks today. */
    public static final int MOST_PLACES = 300;

    private final PositionStore store;
    private final PrintsUnderLaser prints;
    private final Clock clock;

    LearnedPlaces(PositionStore store, PrintsUnderLaser prints, Clock clock) {
        this.store = store;
        this.prints = prints;
        this.clock = clock;
    }

    /**
     * What is left when a print is cut by eye.
     *
     * @param check shift and turn that were counted with
     * @param spare what is left after half the kerf; negative when the cut may leave the print
     * @param learnedFrom boards that the turn is learned from; 0 when it is the one set for sticking by hand
     */
    public record ByEye(StickingCheck check, Length spare, int learnedFrom) {}

    /** Where the machine's fence brings prints, and how far off one may lie; from what was measured with this bed and axes. */
    @Transactional(readOnly = true)
    public LearnedPlace fence(Machine machine) {
        return learned(machine, true);
    }

    /** Where prints come to lie that are laid without the fence; of several boards on the bed the first, others lie beside it. */
    @Transactional(readOnly = true)
    public LearnedPlace byHand(Machine machine) {
        return learned(machine, false);
    }

    private LearnedPlace learned(Machine machine, boolean inFence) {
        List<Position> boards = LearnedOverhang.lastOfEach(measuredOn(machine)).stream()
                .filter(position -> position.inJig() == inFence && (inFence || position.copy() == 1))
                .toList();
        TradeNumbers numbers = prints.numbers();
        return LearnedPlace.of(
                boards,
                inFence ? store.fencesLaid(machine.id()) : List.of(),
                numbers.holdDownMargin(),
                numbers.stickShift(),
                numbers.stickTurnDegrees());
    }

    /**
     * A print that is cut where the eye puts the file: shifted as Set-up says for sticking by hand, and turned as prints on
     * this machine usually lie, for the file is moved and not turned.
     */
    @Transactional(readOnly = true)
    public ByEye byEye(DrawnPrint print, Machine machine) {
        TradeNumbers numbers = prints.numbers();
        LearnedPlace hand = byHand(machine);
        StickingCheck check = StickingCheck.of(
                print.outline(0),
                print.finished(),
                print.overhang(),
                numbers.stickShift(),
                hand.farthestTurned().orElse(numbers.stickTurnDegrees()));
        return new ByEye(
                check,
                check.spare().minus(machine.beam().kerf().times(0.5)),
                hand.farthestTurned().isPresent() ? hand.learnedFrom() : 0);
    }

    /** The same for an order's usual files; none before it is learned how far prints lie turned on the machine. */
    @Transactional(readOnly = true)
    public Optional<ByEye> byEyeOf(Order order, Machine machine, CutParameters parameters) {
        return byHand(machine)
                .farthestTurned()
                .map(learned -> byEye(prints.printOf(order, prints.pace(order, machine, parameters)), machine));
    }

    /** Places measured by marks with the bed and the axes that the machine has now, newest first; others are other numbers. */
    @Transactional(readOnly = true)
    public List<Position> measuredOn(Machine machine) {
        return store.measuredOn(machine.id(), MOST_PLACES).stream()
                .filter(position -> position.bed().equals(machine.bed())
                        && position.axes().equals(machine.control().axes()))
                .toList();
    }

    /** The fence was put on the machine's bed again: what was measured in it before says no longer where it lies. */
    @Transactional
    public void fenceLaid(long machineId, String by) {
        store.fenceLaid(machineId, by, clock.instant());
    }

    /** Which overhang would have done for what was measured on a machine. */
    @Transactional(readOnly = true)
    public LearnedOverhang overhang(Machine machine) {
        return LearnedOverhang.of(
                measuredOn(machine),
                store.fencesLaid(machine.id()),
                machine.beam().kerf(),
                store.rules().repeatability(),
                prints.numbers().stickShift());
    }
}
