package puzzleworkshop.cutting.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import java.util.Optional;
import puzzleworkshop.cutting.jobs.CutJob;

/** Where one part of an upper room stands on the panel of a cut; it is exchanged only when it cannot be renewed. */
final class PartPlace extends Div {

    private final transient CutJobPart part;
    private final transient Runnable changed;
    private transient Optional<Component> content = Optional.empty();

    PartPlace(CutJobPart part, Runnable changed) {
        this.part = part;
        this.changed = changed;
        addClassName("cutting-job-group");
    }

    void show(CutJob job) {
        boolean renewed = content.filter(CutJobPart.Renewable.class::isInstance)
                .map(CutJobPart.Renewable.class::cast)
                .filter(shown -> shown.renew(job))
                .isPresent();
        if (!renewed) {
            removeAll();
            content = part.show(job, changed);
            content.ifPresent(this::add);
        }
    }
}
