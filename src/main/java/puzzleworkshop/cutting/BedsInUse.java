package puzzleworkshop.cutting;

import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.UsualBed;
import puzzleworkshop.sheets.MachineBeds;

/** Tells the rack what the machines in use reach, and the check of cut files which bed is meant. */
@Component
class BedsInUse implements MachineBeds, UsualBed {

    private final Machines machines;

    BedsInUse(Machines machines) {
        this.machines = machines;
    }

    @Override
    public List<Size> beds() {
        return machines.inUse().stream().map(Machine::bed).toList();
    }

    @Override
    public Optional<Size> bed() {
        return machines.standard().map(Machine::bed);
    }
}
