package puzzleworkshop.cutting.ui.settings;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextField;
import java.util.Optional;
import java.util.function.Consumer;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.Workpiece;
import puzzleworkshop.cutting.jobs.Workpiece.Film;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.sheets.board.BoardContamination;

/** Asks what lies under the head before a cut that belongs to no order; nothing is taken for granted. */
class TestCutDialog extends Dialog {

    TestCutDialog(CutSetting setting, Formatter figures, Consumer<CutJob.Wish> prepared) {
        super(figures.text("cutting.cut.open"));
        TextField label = new TextField(figures.text("cutting.cut.label"));
        label.setValue(figures.text("cutting.cut.test"));
        label.setMaxLength(80);
        label.setWidthFull();
        Select<BoardContamination> past = new Select<>();
        past.setLabel(figures.text("cutting.cut.past"));
        past.setItems(BoardContamination.values());
        past.setItemLabelGenerator(value -> figures.text("cutting.past." + value.name()));
        past.setWidthFull();
        Select<Film> film = new Select<>();
        film.setLabel(figures.text("cutting.cut.film"));
        film.setItems(Film.values());
        film.setItemLabelGenerator(value -> figures.text("cutting.film." + value.name()));
        film.setWidthFull();
        Button prepare = new Button(figures.text("cutting.cut.prepare"), event -> {
            mark(past, figures);
            mark(film, figures);
            label.setInvalid(label.getValue().isBlank());
            label.setErrorMessage(figures.text("cutting.cut.missing"));
            if (past.getValue() != null
                    && film.getValue() != null
                    && !label.getValue().isBlank()) {
                close();
                prepared.accept(new CutJob.Wish(
                        Optional.empty(),
                        label.getValue().strip(),
                        setting.machine().id(),
                        new Workpiece(setting.board(), past.getValue(), film.getValue(), ""),
                        Optional.empty()));
            }
        });
        prepare.addThemeVariants(ButtonVariant.PRIMARY);
        add(new Paragraph(figures.text("cutting.cut.lead")), label, past, film);
        getFooter().add(new Button(figures.text("cutting.cancel"), event -> close()), prepare);
    }

    private static void mark(Select<?> field, Formatter figures) {
        field.setInvalid(field.getValue() == null);
        field.setErrorMessage(figures.text("cutting.cut.missing"));
    }
}
