package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.Component;
import java.util.Optional;

/** Something that somebody has to see to, shown at the head of This week by whichever room knows of it; beans, by place. */
public interface WeekNotice {

    int place();

    /** Empty when there is nothing to see to, or not for who is signed in. */
    Optional<Component> show();
}
