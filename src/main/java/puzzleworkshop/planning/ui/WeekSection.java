package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.Component;
import java.util.Optional;
import puzzleworkshop.runtime.Change;

/** What another room has to say on This week; beans of this type stand above the days, by place. */
public interface WeekSection {

    int place();

    /** @return empty when there is nothing to say */
    Optional<Component> show();

    /** Whether it is to be shown again after a change. */
    boolean restsOn(Change change);
}
