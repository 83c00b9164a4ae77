package puzzleworkshop.boards.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.TextField;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import puzzleworkshop.boards.BoardCuts;
import puzzleworkshop.boards.LeftPart;
import puzzleworkshop.boards.OrderBoards;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.ui.OutlineEditor;
import puzzleworkshop.sheets.ui.SheetDrawing;
import puzzleworkshop.workshop.SignedIn;

/**
 * What is left when the reserved blank is cut: each part proposed with its useful rectangles, to keep, to correct corner
 * by corner, or to throw away; one press confirms.
 */
class CutForm extends Div {

    private final transient Formatter figures;
    private final transient List<Supplier<Optional<Outline>>> parts = new ArrayList<>();

    CutForm(
            Sheet sheet,
            List<LeftPart> left,
            OrderBoards boards,
            BoardCuts cuts,
            SignedIn who,
            Formatter figures,
            Runnable done) {
        this.figures = figures;
        addClassName("pw-section");
        add(new H2(figures.text("sheets.cut.title")), new Paragraph(figures.text("sheets.cut.text")));
        left.forEach(part -> add(part(part)));
        TextField place = new TextField(figures.text("sheets.cut.place"));
        place.setValue(sheet.facts().place());
        Button cut = new Button(figures.text("sheets.cut.confirm"), event -> {
            List<Outline> kept = new ArrayList<>();
            for (Supplier<Optional<Outline>> part : parts) {
                part.get().ifPresent(kept::add);
            }
            if (Feedback.unlessRefused(
                    figures,
                    "sheets.cut.done",
                    () -> cuts.cut(sheet.id(), kept, place.getValue().strip(), who.name()))) {
                done.run();
            }
        });
        cut.addThemeVariants(ButtonVariant.PRIMARY);
        Button release = new Button(figures.text("sheets.cut.release"), event -> {
            if (Feedback.unlessRefused(figures, "sheets.cut.released", () -> boards.release(sheet.id(), who.name()))) {
                done.run();
            }
        });
        release.addThemeVariants(ButtonVariant.TERTIARY);
        Div row = new Div(place, cut, release);
        row.addClassName("pw-row");
        add(row);
    }

    /** Why it is kept or not, and what it is best sawn to. */
    private String words(LeftPart left) {
        String why = figures.say(left.why());
        return left.sawing().map(sawing -> why + " " + figures.say(sawing)).orElse(why);
    }

    private Div part(LeftPart left) {
        Remainder.Part part = left.part();
        Checkbox keep = new Checkbox(figures.text("sheets.cut.keep"), left.keep());
        Outline outline = part.outline();
        SheetDrawing drawing = new SheetDrawing(figures);
        drawing.show(outline, figures.text("sheets.cut.part"), new Remainder(List.of(part)));
        Div shape = new Div(drawing);
        OutlineEditor[] editor = new OutlineEditor[1];
        Button correct = new Button(figures.text("sheets.cut.correct"));
        correct.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        correct.addClickListener(event -> {
            editor[0] = new OutlineEditor(figures, any -> {});
            editor[0].start(outline);
            shape.removeAll();
            shape.add(editor[0]);
            correct.setVisible(false);
        });
        parts.add(() ->
                !keep.getValue() ? Optional.empty() : editor[0] == null ? Optional.of(outline) : editor[0].outline());
        Div text = new Div(keep, correct);
        text.addClassName("pw-row");
        Div whole = new Div(shape, new SmallText(words(left)), text);
        whole.addClassName("sheets-part");
        return whole;
    }
}
