package puzzleworkshop.planning.calendar;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.dao.DataIntegrityViolationException;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.runtime.Change;
import puzzleworkshop.runtime.VersionedCache;
import puzzleworkshop.workshop.Stage;

/**
 * Who works when, which days are free, when the machines may run, and by which ways orders leave. Every page with a day on it
 * asks for them and they hardly ever change: kept until they do.
 */
@Service
public class WorkingTimes {

    private final WorkingTimesStore store;
    private final AfterCommit afterCommit;
    private final VersionedCache<Class<WorkingCalendar>, WorkingCalendar> hours =
            VersionedCache.<Class<WorkingCalendar>, WorkingCalendar>ofMost(1).restingOn(HoursChanged.class);
    private final VersionedCache<Class<DeliveryWay>, List<DeliveryWay>> ways =
            VersionedCache.<Class<DeliveryWay>, List<DeliveryWay>>ofMost(1).restingOn(HoursChanged.class);

    WorkingTimes(WorkingTimesStore store, AfterCommit afterCommit) {
        this.store = store;
        this.afterCommit = afterCommit;
    }

    /** A person as kept, with the id by which to change it. */
    public record KeptPerson(long id, Worker person) {}

    /**
     * A day without work.
     *
     * @param person absent for a day on which the whole workshop is closed
     * @param delivered whether carriers deliver on it all the same; never on a public holiday
     */
    public record FreeDay(long id, Optional<Long> person, LocalDate day, String note, boolean delivered) {}

    /** Plans made before it no longer hold. */
    public record HoursChanged() implements Change {}

    /** Before those who plan again. */
    @EventListener(HoursChanged.class)
    @Order(Ordered.HIGHEST_PRECEDENCE)
    void forget() {
        hours.forget();
        ways.forget();
    }

    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public WorkingCalendar calendar() {
        return hours.get(WorkingCalendar.class, this::readCalendar);
    }

    private WorkingCalendar readCalendar() {
        Map<Stage.Resource, OpenHours> machines = store.machineHours();
        Set<LocalDate> closed = new HashSet<>();
        Set<LocalDate> undelivered = new HashSet<>();
        store.freeDays().stream().filter(day -> day.person().isEmpty()).forEach(day -> {
            closed.add(day.day());
            if (!day.delivered()) {
                undelivered.add(day.day());
            }
        });
        return new WorkingCalendar(
                store.people().stream().map(KeptPerson::person).toList(),
                machines.getOrDefault(Stage.Resource.LASER, OpenHours.NONE),
                machines.getOrDefault(Stage.Resource.PRINTER, OpenHours.NONE),
                new FreeDays(closed, undelivered),
                store.evenings());
    }

    public List<KeptPerson> people() {
        return store.people();
    }

    /**
     * Keeps a person's name, hours and stages; free days are kept apart.
     *
     * @param id of the person, absent for a new one
     */
    @Transactional
    public long save(Optional<Long> id, Worker person) {
        String name = person.name().strip();
        if (name.isEmpty()) {
            throw new Refused("planning.person.nameless");
        }
        try {
            long kept = id.orElseGet(() -> store.insert(name));
            store.update(kept, name, person.does());
            store.replaceHours(kept, null, person.hours());
            changed();
            return kept;
        } catch (DuplicateKeyException twice) {
            throw new Refused("planning.person.twice", name);
        }
    }

    @Transactional
    public void removePerson(long id) {
        if (store.people().size() == 1) {
            throw new Refused("planning.person.last");
        }
        store.deletePerson(id);
        changed();
    }

    /** Hours of the laser or the printer. */
    public OpenHours hours(Stage.Resource machine) {
        return store.machineHours().getOrDefault(machine, OpenHours.NONE);
    }

    @Transactional
    public void saveHours(Stage.Resource machine, OpenHours hours) {
        store.replaceHours(null, machine, hours);
        changed();
    }

    /** In the order of days. */
    public List<FreeDay> freeDays() {
        return store.freeDays();
    }

    /**
     * A day off.
     *
     * @param person absent for a public holiday: nobody works, nothing is delivered
     */
    @Transactional
    public void free(Optional<Long> person, LocalDate day, String note) {
        store.addFreeDay(person.orElse(null), day, note.strip(), false);
        changed();
    }

    /** Nobody works, while parcels that are on their way arrive. */
    @Transactional
    public void close(LocalDate day, String note) {
        store.addFreeDay(null, day, note.strip(), true);
        changed();
    }

    @Transactional
    public void workAgain(long freeDay) {
        store.deleteFreeDay(freeDay);
        changed();
    }

    /** Agrees that a person works longer on a day. */
    @Transactional
    public void agree(WorkingCalendar.Evening evening) {
        store.addEvening(evening);
        changed();
    }

    @Transactional
    public void callOff(String person, LocalDate day) {
        store.deleteEvening(person, day);
        changed();
    }

    /** The usual way first. */
    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public List<DeliveryWay> ways() {
        return ways.get(DeliveryWay.class, store::ways);
    }

    @Transactional(propagation = Propagation.SUPPORTS, readOnly = true)
    public DeliveryWay usualWay() {
        return ways().getFirst();
    }

    /** A way with id 0 is new. */
    @Transactional
    public long save(DeliveryWay way) {
        if (way.name().isBlank()) {
            throw new Refused("planning.way.nameless");
        }
        try {
            long id = way.id();
            if (id == 0) {
                id = store.insert(way);
            } else {
                store.update(way);
            }
            changed();
            return id;
        } catch (DuplicateKeyException twice) {
            throw new Refused("planning.way.twice", way.name());
        }
    }

    @Transactional
    public void makeUsual(long way) {
        store.makeUsual(way);
        changed();
    }

    @Transactional
    public void removeWay(long id) {
        try {
            if (!store.deleteWay(id)) {
                throw new Refused("planning.way.used");
            }
        } catch (DataIntegrityViolationException anOrderLeavesByIt) {
            throw new Refused("planning.way.used");
        }
        changed();
    }

    private void changed() {
        afterCommit.tell(new HoursChanged());
    }
}
