package puzzleworkshop.letters.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Paragraph;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.letters.mail.MailAccounts;
import puzzleworkshop.workshop.ui.SetUpPart;
import puzzleworkshop.workshop.ui.SetUpSection;

/** The way from Set-up to the page of letters. */
@org.springframework.stereotype.Component
class LettersSection implements SetUpSection {

    private static final int PLACE = 65;

    private final MailAccounts accounts;
    private final Formatter figures;

    LettersSection(MailAccounts accounts, Formatter figures) {
        this.accounts = accounts;
        this.figures = figures;
    }

    @Override
    public int place() {
        return PLACE;
    }

    @Override
    public List<SetUpPart> parts() {
        return List.of(new SetUpPart("letters.view", this::show));
    }

    private Component show() {
        PageSection section = new PageSection(
                figures.text("letters.view"),
                new Paragraph(figures.text(accounts.sends() ? "letters.section.on" : "letters.section.off")),
                new Anchor("set-up/letters", figures.text("letters.section.open")));
        return section;
    }
}
