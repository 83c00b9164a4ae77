package puzzleworkshop.cutting;

import java.util.List;
import org.springframework.stereotype.Component;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.MachineBeds;

/** Tells the rack what the machines in use reach. */
@Component
class BedsInUse implements MachineBeds {

    private final Machines machines;

    BedsInUse(Machines machines) {
        this.machines = machines;
    }

    @Override
    public List<Size> beds() {
        return machines.inUse().stream().map(Machine::bed).toList();
    }
}
