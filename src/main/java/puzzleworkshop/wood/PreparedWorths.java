package puzzleworkshop.wood;

import jakarta.annotation.PreDestroy;
import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Component;
import puzzleworkshop.sheets.RackShapes;
import puzzleworkshop.wood.asked.AskedFor;

/**
 * Works out in a thread of its own what remainders are worth as soon as the rack or what is asked for has changed, so that whoever
 * asks for a sheet next need not wait for it. Who asks before it is done waits for this one working out, not for another (single
 * flight, by what the answer rests on). It looks for changes instead of being told: a change told would have every answer of that
 * transaction worked out for it alone.
 */
@Component
class PreparedWorths {

    private static final Logger LOG = LoggerFactory.getLogger(PreparedWorths.class);
    private static final int PATIENCE_SECONDS = 8;

    private final LearnedLadder ladder;
    private final RackShapes shapes;
    private final AskedFor asked;
    private final int everyMillis;
    private final ScheduledExecutorService thread = Executors.newSingleThreadScheduledExecutor(
            Thread.ofPlatform().daemon().name("worths-", 0).factory());

    private String preparedFor = "";
    private boolean failing;

    /** @param everyMillis how often it looks; 0: never */
    PreparedWorths(
            LearnedLadder ladder,
            RackShapes shapes,
            AskedFor asked,
            @Value("${puzzleworkshop.worths.every-millis:500}") int everyMillis) {
        this.ladder = ladder;
        this.shapes = shapes;
        this.asked = asked;
        this.everyMillis = everyMillis;
    }

    @EventListener(ApplicationReadyEvent.class)
    void start() {
        if (everyMillis > 0) {
            thread.scheduleWithFixedDelay(this::look, everyMillis, everyMillis, TimeUnit.MILLISECONDS);
        }
    }

    private void look() {
        try {
            prepare();
            failing = false;
        } catch (RuntimeException away) {
            // said once, not twice a second for as long as the database is away
            if (!failing) {
                LOG.warn("Worths of remainders could not be prepared; they are worked out when asked for", away);
            }
            failing = true;
        }
    }

    /** Whether anything had changed since it was prepared last. */
    synchronized boolean prepare() {
        String now = shapes.stamp() + " " + asked.stamp();
        if (now.equals(preparedFor)) {
            return false;
        }
        ladder.ladder(List.of());
        preparedFor = now;
        return true;
    }

    @PreDestroy
    void stop() throws InterruptedException {
        thread.shutdown();
        if (!thread.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
            thread.shutdownNow();
        }
    }
}
