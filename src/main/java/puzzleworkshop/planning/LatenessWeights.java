package puzzleworkshop.planning;

import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.planning.schedule.LatenessCost;

/** The points with which the owner wants lateness to be counted when the week's sequence is chosen. */
@Service
public class LatenessWeights {

    private final PlanStore store;
    private final ApplicationEventPublisher events;

    LatenessWeights(PlanStore store, ApplicationEventPublisher events) {
        this.store = store;
        this.events = events;
    }

    public LatenessCost cost() {
        return store.latenessCost();
    }

    /** Plans made before no longer hold, as after a change of the hours. */
    @Transactional
    public void save(LatenessCost cost) {
        store.update(cost);
        TransactionSynchronizationManager.registerSynchronization(new TransactionSynchronization() {
            @Override
            public void afterCommit() {
                events.publishEvent(new WorkingTimes.HoursChanged());
            }
        });
    }
}
