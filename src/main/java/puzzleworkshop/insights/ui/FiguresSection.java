package puzzleworkshop.insights.ui;

import com.vaadin.flow.component.Component;
import java.time.LocalDate;
import java.util.Optional;

/** Figures of another room; beans of this type stand below those of money, by place. */
public interface FiguresSection {

    int place();

    /**
     * @param since first day of the months that the page counts
     * @return empty when there is nothing to show
     */
    Optional<Component> show(LocalDate since);
}
