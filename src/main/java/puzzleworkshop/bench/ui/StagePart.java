package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.Component;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.bench.Checklist;
import puzzleworkshop.workshop.Stage;

/**
 * What one stage shows besides picture and checklist: the cut with its settings, the count at packing. Rooms above the bench
 * take part by having such a bean.
 */
public interface StagePart {

    Stage stage();

    /** @param again to be run after it has changed something */
    Optional<Component> show(Waiting waiting, Runnable again);

    /** What is to be seen to at this stage besides the orders, above their list. */
    default Optional<Component> aboveTheQueue() {
        return Optional.empty();
    }

    /**
     * A checklist of its own in place of the stage's general one; one without lines where the part itself shows what to look
     * at. Empty: the general one stands.
     */
    default Optional<List<Checklist.Line>> checklist(Waiting waiting) {
        return Optional.empty();
    }

    /** Whether it starts and stops the clock itself, so that no second one stands beside it. */
    default boolean keepsTheClock() {
        return false;
    }

    /** How ticking the stage off stands beside it: one thing at a time is the next one. */
    default Tick tick(Waiting waiting) {
        return Tick.NEXT;
    }

    /** Ticking the stage off. */
    enum Tick {
        /** It is what comes next. */
        NEXT,
        /** Possible, but something else is more likely. */
        ASIDE,
        /** Not before this part is through. */
        NOT_YET
    }
}
