package puzzleworkshop.insights.ui;

import com.vaadin.flow.component.Component;
import java.util.Optional;

/** Figures of another room; beans of this type stand below those of money, by place. */
public interface FiguresSection {

    int place();

    /** @return empty when there is nothing to show */
    Optional<Component> show();
}
