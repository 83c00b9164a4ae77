package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.Component;
import java.util.Optional;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.workshop.Stage;

/** What one stage shows besides picture and checklist: the cut with its settings, the count at packing. */
interface StagePart {

    Stage stage();

    /** @param again to be run after it has changed something */
    Optional<Component> show(Waiting waiting, Runnable again);

    /** Whether it brings a checklist of its own in place of the stage's general one. */
    default boolean replacesChecklist() {
        return false;
    }
}
