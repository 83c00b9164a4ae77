package puzzleworkshop.letters.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.IntegerField;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.letters.ReminderSteps;
import puzzleworkshop.letters.Wordings;

/** How long one waits before each of the three payment reminders. */
class ReminderForm extends Div {

    ReminderForm(Wordings wordings, Formatter figures) {
        addClassName("pw-section");
        ReminderSteps now = wordings.reminderSteps();
        IntegerField first = days("letters.reminders.first", now.first());
        IntegerField second = days("letters.reminders.second", now.second());
        IntegerField last = days("letters.reminders.last", now.last());
        Button save = new Button(getTranslation("letters.reminders.save"), press -> {
            boolean all = true;
            for (IntegerField field : new IntegerField[] {first, second, last}) {
                field.setInvalid(field.getValue() == null);
                all &= field.getValue() != null;
            }
            if (all) {
                Feedback.unlessRefused(
                        figures,
                        "letters.reminders.saved",
                        () -> wordings.save(new ReminderSteps(first.getValue(), second.getValue(), last.getValue())));
            }
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        Div row = new Div(first, second, last);
        row.addClassName("pw-row");
        add(
                new H2(getTranslation("letters.reminders")),
                new Paragraph(getTranslation("letters.reminders.lead")),
                row,
                save);
    }

    private IntegerField days(String key, int value) {
        IntegerField field = new IntegerField(getTranslation(key));
        field.setMin(1);
        field.setMax(365);
        field.setStepButtonsVisible(true);
        field.setValue(value);
        return field;
    }
}
