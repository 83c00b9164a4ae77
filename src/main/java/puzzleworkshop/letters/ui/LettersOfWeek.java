package puzzleworkshop.letters.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Span;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.letters.Letter;
import puzzleworkshop.letters.Letters;
import puzzleworkshop.letters.LettersChanged;
import puzzleworkshop.letters.ReminderSteps;
import puzzleworkshop.letters.Reminders;
import puzzleworkshop.letters.Reminders.Overdue;
import puzzleworkshop.letters.mail.MailDesk;
import puzzleworkshop.letters.mail.OutboxMoved;
import puzzleworkshop.planning.ui.WeekSection;
import puzzleworkshop.runtime.Change;
import puzzleworkshop.workshop.Workshop;

/** At the head of This week: letters that could not go, and payment reminders that are due. */
@org.springframework.stereotype.Component
class LettersOfWeek implements WeekSection {

    private static final int PLACE = 20;
    private static final int MOST = 5;

    private final Letters letters;
    private final MailDesk desk;
    private final Reminders reminders;
    private final Workshop workshop;
    private final Formatter figures;

    LettersOfWeek(Letters letters, MailDesk desk, Reminders reminders, Workshop workshop, Formatter figures) {
        this.letters = letters;
        this.desk = desk;
        this.reminders = reminders;
        this.workshop = workshop;
        this.figures = figures;
    }

    @Override
    public int place() {
        return PLACE;
    }

    @Override
    public Optional<Component> show() {
        return Optional.of(new Board());
    }

    @Override
    public boolean restsOn(Change change) {
        return change instanceof OutboxMoved || change instanceof LettersChanged;
    }

    /** Takes no room while there is nothing to see to. */
    @StyleSheet("context://letters.css")
    private final class Board extends Div {

        private Board() {
            addClassNames("pw-stack", "letters-week");
            fill();
        }

        private void fill() {
            removeAll();
            List<Letter> faults = letters.withFaults();
            if (!faults.isEmpty()) {
                Div box = box("letters.week.faults", faults.size(), "bad");
                faults.stream()
                        .limit(MOST)
                        .forEach(letter -> box.add(new LetterRow(letter, desk, figures, this::fill).withOrder()));
                more(box, faults.size());
                add(box);
            }
            LocalDate today = workshop.today();
            List<Overdue> due =
                    reminders.overdue().stream().filter(one -> one.isDue(today)).toList();
            if (!due.isEmpty()) {
                Div box = box("letters.week.reminders", due.size(), "warn");
                due.stream().limit(MOST).forEach(one -> box.add(row(one)));
                more(box, due.size());
                add(box);
            }
            setVisible(getComponentCount() > 0);
        }

        private Div box(String key, int count, String kind) {
            Div box = new Div(new H2(figures.text(key, count)));
            box.addClassNames("pw-section", "letters-notice");
            box.getElement().setAttribute("data-kind", kind);
            return box;
        }

        private void more(Div box, int all) {
            if (all > MOST) {
                SmallText more = new SmallText(figures.text("letters.week.more", all - MOST));
                box.add(more);
            }
        }

        private Div row(Overdue one) {
            Span words = new Span(figures.text(
                    "letters.week.reminder",
                    one.customer(),
                    one.open(),
                    one.dueOn(),
                    one.next()
                            .map(ReminderSteps.Due::kind)
                            .map(kind -> figures.text(kind.textKey()))
                            .orElse("")));
            Div row = new Div(new Anchor("orders/" + one.number(), one.number()), words);
            row.addClassName("letters-row");
            return row;
        }
    }
}
