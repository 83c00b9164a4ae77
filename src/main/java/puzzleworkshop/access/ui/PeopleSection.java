package puzzleworkshop.access.ui;

import com.vaadin.flow.component.Component;
import java.util.List;
import puzzleworkshop.access.Accounts;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.workshop.ui.SetUpPart;
import puzzleworkshop.workshop.ui.SetUpSection;

/** The people of the workshop, in Set-up, which only an owner may enter. */
@org.springframework.stereotype.Component
class PeopleSection implements SetUpSection {

    private final Accounts accounts;
    private final Formatter figures;

    PeopleSection(Accounts accounts, Formatter figures) {
        this.accounts = accounts;
        this.figures = figures;
    }

    @Override
    public int place() {
        return 90;
    }

    @Override
    public List<SetUpPart> parts() {
        return List.of(new SetUpPart("access.people", this::show));
    }

    private Component show() {
        return new People(accounts, figures);
    }
}
