package puzzleworkshop.machines;

import java.util.List;
import java.util.Optional;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Refused;

/** The laser cutters of the workshop. */
@Service
public class Machines {

    private final MachineStore store;

    Machines(MachineStore store) {
        this.store = store;
    }

    /** All, the standard one first and retired ones last. */
    @Transactional(readOnly = true)
    public List<Machine> all() {
        return store.all();
    }

    /** Those in use, the standard one first. */
    @Transactional(readOnly = true)
    public List<Machine> inUse() {
        return store.all().stream().filter(machine -> !machine.retired()).toList();
    }

    @Transactional(readOnly = true)
    public Optional<Machine> find(long id) {
        return store.find(id);
    }

    /** The machine that new orders are planned on; none before the first machine is written down. */
    @Transactional(readOnly = true)
    public Optional<Machine> standard() {
        return store.standard().flatMap(store::find);
    }

    /**
     * Writes a machine down: new with id 0, else changed. The first one becomes the standard machine.
     *
     * @throws Refused when another machine has the name
     */
    @Transactional
    public Machine save(Machine machine) {
        boolean taken = store.all().stream()
                .anyMatch(other -> other.id() != machine.id() && other.name().equalsIgnoreCase(machine.name()));
        if (taken) {
            throw new Refused("cutting.machine.name.taken", machine.name());
        }
        long id = machine.id();
        try {
            if (id == 0) {
                id = store.insert(machine);
            } else {
                store.update(machine);
            }
        } catch (DuplicateKeyException meanwhile) {
            throw new Refused("cutting.machine.name.taken", machine.name());
        }
        store.replaceWearParts(id, machine.costs().wearParts());
        if (machine.standard() || store.standard().isEmpty()) {
            store.makeStandard(id);
        }
        return store.find(id).orElseThrow();
    }

    /** From now on new orders are planned on this one. */
    @Transactional
    public void makeStandard(long id) {
        store.makeStandard(id);
    }

    /**
     * No longer used; its trials and cuts stay.
     *
     * @throws Refused when it is the standard machine: another must be chosen first
     */
    @Transactional
    public void retire(long id) {
        Machine machine = store.find(id).orElseThrow();
        if (machine.standard()) {
            throw new Refused("cutting.machine.standard.retire", machine.name());
        }
        store.retire(id, true);
    }

    @Transactional
    public void takeBack(long id) {
        store.retire(id, false);
    }
}
