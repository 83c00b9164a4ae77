package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.CheckboxGroup;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.component.timepicker.TimePicker;
import java.time.DayOfWeek;
import java.time.LocalTime;
import java.time.format.TextStyle;
import java.util.EnumSet;
import java.util.Set;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.planning.calendar.DeliveryWay;
import puzzleworkshop.planning.calendar.WorkingTimes;

/** The ways by which orders reach their customers: when they leave, until what time, and how long they take. */
@StyleSheet("context://planning.css")
class WaysForm extends Div {

    private final transient WorkingTimes times;
    private final transient Formatter figures;
    private final Div rows = new Div();

    WaysForm(WorkingTimes times, Formatter figures) {
        this.times = times;
        this.figures = figures;
        addClassName("pw-section");
        rows.addClassName("planning-hours");
        Button more = new Button(
                getTranslation("planning.way.add"),
                e -> rows.add(row(
                        new DeliveryWay(
                                0,
                                "",
                                EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.FRIDAY),
                                LocalTime.of(16, 0),
                                2,
                                EnumSet.range(DayOfWeek.MONDAY, DayOfWeek.SATURDAY)),
                        false)));
        more.addThemeVariants(ButtonVariant.TERTIARY);
        add(new H2(getTranslation("planning.ways")), new Paragraph(getTranslation("planning.ways.lead")), rows, more);
        read();
    }

    private void read() {
        rows.removeAll();
        long usual = times.usualWay().id();
        times.ways().forEach(way -> rows.add(row(way, way.id() == usual)));
    }

    private Div row(DeliveryWay way, boolean usual) {
        TextField name = new TextField(getTranslation("planning.way.name"));
        name.setValue(way.name());
        CheckboxGroup<DayOfWeek> leaves = days("planning.way.leaves", way.leavesOn());
        TimePicker cutOff = new TimePicker(getTranslation("planning.way.cut-off"), way.cutOff());
        cutOff.setLocale(Texts.LOCALE);
        IntegerField onTheWay = new IntegerField(getTranslation("planning.way.days"));
        onTheWay.setValue(way.daysOnTheWay());
        onTheWay.setMin(0);
        onTheWay.setMax(60);
        onTheWay.setStepButtonsVisible(true);
        CheckboxGroup<DayOfWeek> arrives = days("planning.way.arrives", way.arrivesOn());
        Button save = new Button(
                getTranslation("workshop.save"),
                e -> Feedback.unlessRefused(figures, "workshop.saved", () -> {
                    if (leaves.getValue().isEmpty() || arrives.getValue().isEmpty()) {
                        throw new Refused("planning.way.dayless");
                    }
                    if (cutOff.getValue() == null || onTheWay.getValue() == null || onTheWay.isInvalid()) {
                        throw new Refused("planning.way.incomplete");
                    }
                    times.save(new DeliveryWay(
                            way.id(),
                            name.getValue(),
                            leaves.getValue(),
                            cutOff.getValue(),
                            onTheWay.getValue(),
                            arrives.getValue()));
                    read();
                }));
        Div row = new Div(name, leaves, cutOff, onTheWay, arrives, save);
        row.addClassName("pw-row");
        if (usual) {
            SmallText note = new SmallText(getTranslation("planning.way.usual"));
            row.add(note);
        } else if (way.id() != 0) {
            Button makeUsual = new Button(
                    getTranslation("planning.way.make-usual"),
                    e -> Feedback.unlessRefused(figures, "workshop.saved", () -> {
                        times.makeUsual(way.id());
                        read();
                    }));
            Button remove = new Button(
                    getTranslation("planning.way.remove"),
                    e -> Feedback.unlessRefused(figures, "planning.removed", () -> {
                        times.removeWay(way.id());
                        read();
                    }));
            makeUsual.addThemeVariants(ButtonVariant.TERTIARY);
            remove.addThemeVariants(ButtonVariant.TERTIARY);
            row.add(makeUsual, remove);
        }
        return row;
    }

    private CheckboxGroup<DayOfWeek> days(String key, Set<DayOfWeek> chosen) {
        CheckboxGroup<DayOfWeek> field = new CheckboxGroup<>(getTranslation(key));
        field.addClassName("planning-weekdays");
        field.setItems(DayOfWeek.values());
        field.setItemLabelGenerator(day -> day.getDisplayName(TextStyle.SHORT, Texts.LOCALE));
        field.setValue(chosen);
        return field;
    }
}
