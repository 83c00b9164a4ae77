package puzzleworkshop.planning;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import puzzleworkshop.orders.OrderChanged;
import puzzleworkshop.planning.calendar.WorkingTimes;

/** Lets open screens know that the plan has to be looked at again: an order or the hours have changed. */
@Component
public class LivePlan {

    private final List<Runnable> listeners = new CopyOnWriteArrayList<>();

    /** Listens until the returned stop is run. Listeners must be quick. */
    public Runnable listen(Runnable listener) {
        listeners.add(listener);
        return () -> listeners.remove(listener);
    }

    @EventListener
    void orderChanged(OrderChanged event) {
        listeners.forEach(Runnable::run);
    }

    @EventListener
    void hoursChanged(WorkingTimes.HoursChanged event) {
        listeners.forEach(Runnable::run);
    }
}
