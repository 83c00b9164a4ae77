package puzzleworkshop.letters.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.letters.Letter;
import puzzleworkshop.letters.LetterKind;
import puzzleworkshop.letters.Letters;
import puzzleworkshop.letters.Reminders;
import puzzleworkshop.letters.mail.MailDesk;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderPanel;

/** On an order's page: what was written to the customer, and a letter to write. */
@org.springframework.stereotype.Component
class LettersPanel implements OrderPanel {

    private static final int AFTER_THE_MONEY = 55;

    private final Letters letters;
    private final Reminders reminders;
    private final MailDesk mail;
    private final WritingDesk desk;
    private final Formatter figures;

    LettersPanel(Letters letters, Reminders reminders, MailDesk mail, WritingDesk desk, Formatter figures) {
        this.letters = letters;
        this.reminders = reminders;
        this.mail = mail;
        this.desk = desk;
        this.figures = figures;
    }

    @Override
    public int place() {
        return AFTER_THE_MONEY;
    }

    @Override
    public Optional<Component> show(Order order, Runnable changed) {
        List<Letter> written = letters.of(order.id());
        boolean some = someFit(order);
        if (written.isEmpty() && !some) {
            return Optional.empty();
        }
        Section section = new Section(new H2(figures.text("letters.panel")));
        if (written.isEmpty()) {
            SmallText none = new SmallText(figures.text("letters.panel.none"));
            section.add(none);
        }
        written.forEach(letter -> section.add(new LetterRow(letter, mail, figures, changed)));
        if (some) {
            Button write = new Button(figures.text("letters.panel.write"), press -> write(order, changed));
            Div row = new Div(write);
            row.addClassName("pw-row");
            section.add(row);
        }
        return Optional.of(section);
    }

    /** Something fits every order that was taken; which letters do rests on its money, parcel and complaints, and is asked when one is written. */
    private boolean someFit(Order order) {
        return switch (order.state()) {
            case CONFIRMED, HANDED_OVER, CLOSED -> true;
            case QUOTE, CANCELLED -> !kinds(order).isEmpty();
        };
    }

    private void write(Order order, Runnable changed) {
        List<LetterKind> kinds = kinds(order);
        if (kinds.isEmpty()) {
            changed.run(); // given up meanwhile
        } else {
            desk.open(order, kinds, changed);
        }
    }

    /** A reminder that is due stands first. */
    private List<LetterKind> kinds(Order order) {
        List<LetterKind> kinds = new ArrayList<>(letters.fitting(order.id()));
        reminders.nextFor(order.id()).filter(kinds::remove).ifPresent(next -> kinds.addFirst(next));
        return kinds;
    }

    /** Carries its own style sheet to whichever page it is shown on. */
    @StyleSheet("context://letters.css")
    private static final class Section extends Div {

        private Section(Component... parts) {
            super(parts);
            addClassNames("pw-section", "letters-panel");
        }
    }
}
