package puzzleworkshop.machines;

import java.util.List;
import java.util.Optional;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.runtime.Change;
import puzzleworkshop.runtime.VersionedCache;

/** The laser cutters of the workshop. They are asked for with every board, cut and price, and hardly ever change: kept until they do. */
@Service
public class Machines {

    private final MachineStore store;
    private final AfterCommit afterCommit;
    private final VersionedCache<Class<Machine>, List<Machine>> known =
            VersionedCache.<Class<Machine>, List<Machine>>ofMost(1).restingOn(MachinesChanged.class);

    Machines(MachineStore store, AfterCommit afterCommit) {
        this.store = store;
        this.afterCommit = afterCommit;
    }

    /** Told when a machine was written down, changed, chosen or retired. */
    public record MachinesChanged() implements Change {}

    /** All, the standard one first and retired ones last. */
    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public List<Machine> all() {
        return known.get(Machine.class, store::all);
    }

    /** Before those who work with machines again. */
    @EventListener(MachinesChanged.class)
    @Order(Ordered.HIGHEST_PRECEDENCE)
    @Transactional(propagation = Propagation.SUPPORTS)
    void forget() {
        known.forget();
    }

    /** Those in use, the standard one first. */
    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public List<Machine> inUse() {
        return all().stream().filter(machine -> !machine.retired()).toList();
    }

    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public Optional<Machine> find(long id) {
        return all().stream().filter(machine -> machine.id() == id).findFirst();
    }

    /** The machine that new orders are planned on; none before the first machine is written down. */
    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public Optional<Machine> standard() {
        return all().stream().filter(Machine::standard).findFirst();
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
        afterCommit.tell(new MachinesChanged());
        return store.find(id).orElseThrow();
    }

    /** From now on new orders are planned on this one. */
    @Transactional
    public void makeStandard(long id) {
        store.makeStandard(id);
        afterCommit.tell(new MachinesChanged());
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
        afterCommit.tell(new MachinesChanged());
    }

    @Transactional
    public void takeBack(long id) {
        store.retire(id, false);
        afterCommit.tell(new MachinesChanged());
    }
}
