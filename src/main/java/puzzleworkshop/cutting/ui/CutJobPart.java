package puzzleworkshop.cutting.ui;

import com.vaadin.flow.component.Component;
import java.util.Optional;
import puzzleworkshop.cutting.jobs.CutJob;

/** What a room above adds to a cut wherever it is shown, below what is dialled in; beans of this type. */
public interface CutJobPart {

    /** @param changed to be run after something changed that the checklist depends on */
    Optional<Component> show(CutJob job, Runnable changed);

    /** What is shown and holds what somebody may be typing: it is asked to renew itself before it is exchanged. */
    interface Renewable {

        /**
         * Shows what is new about the same cut and keeps what was typed.
         *
         * @return false when it must be shown from scratch
         */
        boolean renew(CutJob job);
    }
}
