package puzzleworkshop.letters.mail;

import jakarta.annotation.PreDestroy;
import java.time.Clock;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import puzzleworkshop.runtime.AfterCommit;

/** Empties the outbox in a thread of its own: when a letter came in, and every half minute for those that wait. */
@Component
class OutboxRunner {

    private static final Logger LOG = LoggerFactory.getLogger(OutboxRunner.class);
    private static final int SECONDS = 30;
    private static final int PATIENCE_SECONDS = 8;

    private final MailAccounts accounts;
    private final Outbox outbox;
    private final AfterCommit afterCommit;
    private final AtomicBoolean due = new AtomicBoolean();
    private final ScheduledExecutorService thread = Executors.newSingleThreadScheduledExecutor(
            Thread.ofPlatform().daemon().name("outbox-", 0).factory());

    private volatile boolean stopping;
    private boolean recovered;

    OutboxRunner(MailAccounts accounts, OutboxStore store, AfterCommit afterCommit, Clock clock) {
        this.accounts = accounts;
        this.afterCommit = afterCommit;
        this.outbox = new Outbox(store, new SmtpCourier(accounts::access), clock);
    }

    @EventListener(ApplicationReadyEvent.class)
    void start() {
        thread.scheduleWithFixedDelay(this::run, 1, SECONDS, TimeUnit.SECONDS);
    }

    /** A letter came in or was let go again. */
    @EventListener(OutboxMoved.class)
    void moved() {
        if (!stopping && due.compareAndSet(false, true)) {
            thread.execute(this::run);
        }
    }

    private void run() {
        due.set(false);
        try {
            if (!recovered) {
                outbox.recover();
                recovered = true;
            }
            while (!stopping && accounts.sends() && outbox.sendNext()) {
                afterCommit.tell(new OutboxMoved());
            }
        } catch (RuntimeException away) {
            LOG.error("The outbox could not be worked on", away);
        }
    }

    /** What is under way may end by itself; where it does not, the next start sees to it. */
    @PreDestroy
    void stop() throws InterruptedException {
        stopping = true;
        thread.shutdown();
        if (!thread.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
            thread.shutdownNow();
        }
    }
}
