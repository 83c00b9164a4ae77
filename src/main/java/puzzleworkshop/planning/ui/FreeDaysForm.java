package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextField;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.DayField;
import puzzleworkshop.planning.calendar.WorkingCalendar.Evening;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.planning.calendar.WorkingTimes.FreeDay;
import puzzleworkshop.planning.calendar.WorkingTimes.KeptPerson;

/** Holidays, days off, and the evenings that were agreed on. */
@StyleSheet("context://planning.css")
class FreeDaysForm extends Div {

    private final transient WorkingTimes times;
    private final transient Formatter figures;
    private final Div days = new Div();

    FreeDaysForm(WorkingTimes times, Formatter figures) {
        this.times = times;
        this.figures = figures;
        addClassName("pw-section");
        days.addClassName("pw-stack");
        DayField from = new DayField(getTranslation("planning.free.from"));
        DayField to = new DayField(getTranslation("planning.free.to"));
        to.setHelperText(getTranslation("planning.free.to.help"));
        Select<Who> who = new Select<>();
        who.addClassName("planning-free-who");
        who.setLabel(getTranslation("planning.free.who"));
        List<Who> choices = new ArrayList<>(List.of(Who.HOLIDAY, Who.CLOSED));
        times.people().forEach(person -> choices.add(new Who(Optional.of(person), false)));
        who.setItems(choices);
        who.setItemLabelGenerator(
                choice -> choice.person().map(k -> k.person().name()).orElseGet(() -> all(choice.delivered())));
        who.setValue(Who.HOLIDAY);
        TextField note = new TextField(getTranslation("planning.free.note"));
        Button add = new Button(getTranslation("planning.free.add"), e -> {
            LocalDate first = from.getValue();
            if (first == null) {
                from.refuse();
                return;
            }
            if (!to.isFit()) {
                to.refuse();
                return;
            }
            LocalDate last = to.getValue() == null || to.getValue().isBefore(first) ? first : to.getValue();
            Feedback.unlessRefused(figures, "workshop.saved", () -> {
                first.datesUntil(last.plusDays(1))
                        .limit(366)
                        .forEach(day -> free(who.getValue(), day, note.getValue()));
                read();
            });
        });
        Div form = new Div(from, to, who, note, add);
        form.addClassName("pw-row");
        add(new H2(getTranslation("planning.free")), form, days);
        read();
    }

    /**
     * Who does not work.
     *
     * @param person absent for everybody
     * @param delivered whether parcels arrive all the same
     */
    private record Who(Optional<KeptPerson> person, boolean delivered) {

        static final Who HOLIDAY = new Who(Optional.empty(), false);
        static final Who CLOSED = new Who(Optional.empty(), true);
    }

    private void free(Who who, LocalDate day, String note) {
        if (who.delivered()) {
            times.close(day, note);
        } else {
            times.free(who.person().map(KeptPerson::id), day, note);
        }
    }

    private String all(boolean delivered) {
        return getTranslation(delivered ? "planning.free.closed" : "planning.free.all");
    }

    private void read() {
        days.removeAll();
        List<KeptPerson> people = times.people();
        for (FreeDay day : times.freeDays()) {
            String who = day.person()
                    .flatMap(id -> people.stream().filter(p -> p.id() == id).findFirst())
                    .map(p -> p.person().name())
                    .orElseGet(() -> all(day.delivered()));
            row(
                    figures.day(day.day()),
                    who + (day.note().isEmpty() ? "" : " · " + day.note()),
                    () -> times.workAgain(day.id()));
        }
        for (Evening evening : times.calendar().evenings()) {
            row(
                    figures.day(evening.day()),
                    getTranslation(
                            "planning.free.evening",
                            evening.person(),
                            evening.span().toString()),
                    () -> times.callOff(evening.person(), evening.day()));
        }
        if (days.getComponentCount() == 0) {
            Paragraph none = new Paragraph(getTranslation("planning.free.none"));
            none.addClassName("pw-soft");
            days.add(none);
        }
    }

    private void row(String day, String what, Runnable takeAway) {
        Span date = new Span(day);
        date.addClassName("planning-free-day");
        Button remove = new Button(
                getTranslation("planning.free.remove"),
                e -> Feedback.unlessRefused(figures, "planning.removed", () -> {
                    takeAway.run();
                    read();
                }));
        remove.setAriaLabel(getTranslation("planning.free.remove") + ", " + day + ", " + what);
        remove.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        Div row = new Div(date, new Span(what), remove);
        row.addClassName("planning-free-row");
        days.add(row);
    }
}
