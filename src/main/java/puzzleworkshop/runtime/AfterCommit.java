package puzzleworkshop.runtime;

import java.util.LinkedHashSet;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionSynchronization;
import org.springframework.transaction.support.TransactionSynchronizationManager;

/**
 * Tells what has changed once it is safe: after the commit of the transaction that changed it, in the order it happened,
 * each change once. A transaction that is rolled back tells nothing. What must happen within the transaction (or not at
 * all) is a plain event, not a {@link Change}.
 */
@Component
public class AfterCommit {

    private static final Logger LOG = LoggerFactory.getLogger(AfterCommit.class);

    private final ApplicationEventPublisher events;

    AfterCommit(ApplicationEventPublisher events) {
        this.events = events;
    }

    /** Tells the change when the transaction has been committed, or at once outside a transaction. */
    public void tell(Change change) {
        if (!TransactionSynchronizationManager.isSynchronizationActive()) {
            events.publishEvent(change);
            return;
        }
        Waiting waiting = waiting().orElseGet(() -> {
            Waiting first = new Waiting();
            TransactionSynchronizationManager.registerSynchronization(first);
            return first;
        });
        waiting.changes.add(change);
    }

    /** Whether the current transaction has made such a change, which nobody outside it can see yet. */
    static boolean isWaiting(Predicate<Change> such) {
        return TransactionSynchronizationManager.isSynchronizationActive()
                && waiting()
                        .filter(waiting -> waiting.changes.stream().anyMatch(such))
                        .isPresent();
    }

    /** Synchronizations are set aside with their transaction, so an inner transaction of its own finds none here. */
    private static Optional<Waiting> waiting() {
        return TransactionSynchronizationManager.getSynchronizations().stream()
                .filter(Waiting.class::isInstance)
                .map(Waiting.class::cast)
                .filter(waiting -> !waiting.told)
                .findFirst();
    }

    private final class Waiting implements TransactionSynchronization {

        private final Set<Change> changes = new LinkedHashSet<>();
        private boolean told;

        @Override
        public void afterCommit() {
            told = true;
            for (Change change : changes) {
                try {
                    events.publishEvent(change);
                } catch (RuntimeException failed) {
                    // The change itself is committed: whoever made it must not be told that it failed.
                    LOG.error("What has changed could not be told: {}", change, failed);
                }
            }
        }
    }
}
