package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.CheckboxGroup;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.TextField;
import java.time.DayOfWeek;
import java.time.format.TextStyle;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.planning.calendar.OpenHours;
import puzzleworkshop.planning.calendar.Worker;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.planning.calendar.WorkingTimes.KeptPerson;
import puzzleworkshop.workshop.Stage;

/** Hours of people and machines in an ordinary week, written as people write them: 08:00-12:00, 13:00-17:00. */
@StyleSheet("context://planning.css")
class HoursForm extends Div {

    private final transient WorkingTimes times;
    private final transient Formatter figures;
    private final Div rows = new Div();

    HoursForm(WorkingTimes times, Formatter figures) {
        this.times = times;
        this.figures = figures;
        addClassNames("pw-section");
        rows.addClassName("planning-hours");
        Button more = new Button(getTranslation("planning.person.add"), e -> rows.add(person(Optional.empty())));
        more.addThemeVariants(ButtonVariant.TERTIARY);
        add(new H2(getTranslation("planning.hours")), new Paragraph(getTranslation("planning.hours.lead")), rows, more);
        read();
    }

    private void read() {
        rows.removeAll();
        times.people().forEach(kept -> rows.add(person(Optional.of(kept))));
        rows.add(machine(Stage.Resource.LASER), machine(Stage.Resource.PRINTER));
    }

    private Component person(Optional<KeptPerson> kept) {
        TextField name = new TextField(getTranslation("planning.person.name"));
        name.setValue(kept.map(k -> k.person().name()).orElse(""));
        CheckboxGroup<Stage> does = new CheckboxGroup<>(getTranslation("planning.person.does"));
        does.addClassName("planning-weekdays");
        does.setItems(Stage.values());
        does.setItemLabelGenerator(stage -> getTranslation(stage.textKey()));
        does.setValue(kept.map(k -> k.person().does()).orElse(EnumSet.allOf(Stage.class)));
        does.setHelperText(getTranslation("planning.person.does.help"));
        Week week = new Week(kept.map(k -> k.person().hours()).orElse(OpenHours.NONE), name.getValue());
        Button save = new Button(
                getTranslation("workshop.save"),
                e -> Feedback.unlessRefused(figures, "workshop.saved", () -> {
                    times.save(
                            kept.map(KeptPerson::id),
                            new Worker(name.getValue(), week.read(), Set.of(), does.getValue()));
                    read();
                }));
        Button remove = new Button(getTranslation("planning.person.remove"), e -> {
            if (kept.isEmpty()) {
                read();
            } else {
                Feedback.unlessRefused(figures, "planning.removed", () -> {
                    times.removePerson(kept.get().id());
                    read();
                });
            }
        });
        remove.addThemeVariants(ButtonVariant.TERTIARY);
        Div head = new Div(name, does);
        head.addClassName("pw-row");
        return new Div(head, week, foot(week, save, remove));
    }

    private Component machine(Stage.Resource machine) {
        Week week = new Week(times.hours(machine), getTranslation("planning.resource." + machine.name()));
        Button save = new Button(
                getTranslation("workshop.save"),
                e -> Feedback.unlessRefused(figures, "workshop.saved", () -> {
                    times.saveHours(machine, week.read());
                    read();
                }));
        Div text = new Div(
                new H3(getTranslation("planning.resource." + machine.name())),
                new Paragraph(getTranslation("planning.hours." + machine.name())));
        return new Div(text, week, foot(week, save));
    }

    private Component foot(Week week, Button... buttons) {
        SmallText sum = new SmallText(
                getTranslation("planning.hours.sum", figures.minutes(Minutes.of(week.given.minutesAWeek()))));
        Div foot = new Div();
        foot.addClassName("pw-row");
        foot.add(List.of(buttons));
        foot.add(sum);
        return foot;
    }

    /** Seven fields, Monday first. */
    private static final class Week extends Div {
        private final OpenHours given;
        private final Map<DayOfWeek, TextField> fields = new EnumMap<>(DayOfWeek.class);

        Week(OpenHours given, String whose) {
            this.given = given;
            addClassName("planning-hours-week");
            for (DayOfWeek day : DayOfWeek.values()) {
                TextField field = new TextField(day.getDisplayName(TextStyle.SHORT, Texts.LOCALE));
                field.setAriaLabel(whose + ", " + day.getDisplayName(TextStyle.FULL, Texts.LOCALE));
                field.setValue(given.written(day));
                field.setPlaceholder(getTranslation("planning.hours.free"));
                fields.put(day, field);
                add(field);
            }
        }

        OpenHours read() {
            Map<DayOfWeek, List<OpenHours.Span>> spans = new EnumMap<>(DayOfWeek.class);
            Refused first = null;
            for (Map.Entry<DayOfWeek, TextField> entry : fields.entrySet()) {
                try {
                    spans.put(entry.getKey(), OpenHours.read(entry.getValue().getValue()));
                    entry.getValue().setInvalid(false);
                } catch (Refused unreadable) {
                    entry.getValue().setInvalid(true);
                    first = first == null ? unreadable : first;
                }
            }
            if (first != null) {
                throw first;
            }
            return new OpenHours(spans);
        }
    }
}
