package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.planning.WeekPlan.Entry;

/** The same as dragging a card to a day, by keyboard or thumb. */
class DayDialog extends Dialog {

    DayDialog(Entry entry, List<LocalDate> days, Formatter figures, Consumer<Optional<LocalDate>> chosen) {
        setHeaderTitle(getTranslation(
                "planning.day.title",
                entry.order().number(),
                entry.order().customer().name()));
        Div buttons = new Div();
        buttons.addClassName("planning-days");
        for (LocalDate day : days) {
            Button button = new Button(figures.day(day), e -> {
                close();
                chosen.accept(Optional.of(day));
            });
            if (entry.pinned().equals(Optional.of(day))) {
                button.addThemeVariants(ButtonVariant.PRIMARY);
            }
            buttons.add(button);
        }
        Button free = new Button(getTranslation("planning.day.free"), e -> {
            close();
            chosen.accept(Optional.empty());
        });
        free.addThemeVariants(ButtonVariant.TERTIARY);
        free.setEnabled(entry.pinned().isPresent());
        add(new Paragraph(getTranslation("planning.day.lead")), buttons);
        getFooter().add(free, new Button(getTranslation("planning.close"), e -> close()));
    }
}
