package puzzleworkshop.bench;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/** Lets open screens know what happens at the bench, as soon as it is safe in the database. */
@Component
public class BenchNews {

    private final List<Consumer<Ticked>> listeners = new CopyOnWriteArrayList<>();
    private final ApplicationEventPublisher events;

    BenchNews(ApplicationEventPublisher events) {
        this.events = events;
    }

    /** Listens until the returned stop is run. Listeners must be quick and belong to no transaction. */
    public Runnable listen(Consumer<Ticked> listener) {
        listeners.add(listener);
        return () -> listeners.remove(listener);
    }

    void afterCommit(Ticked what) {
        TransactionSynchronizationManager.registerSynchronization(new TransactionSynchronization() {
            @Override
            public void afterCommit() {
                events.publishEvent(what);
            }
        });
    }

    @EventListener
    void ticked(Ticked what) {
        listeners.forEach(listener -> listener.accept(what));
    }
}
