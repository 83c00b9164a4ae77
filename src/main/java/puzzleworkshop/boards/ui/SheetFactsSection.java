package puzzleworkshop.boards.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.ui.FactsForm;
import puzzleworkshop.sheets.ui.OutlineEditor;
import puzzleworkshop.workshop.SignedIn;

/** What is known of a sheet, to be corrected; of a free one its shape too. */
final class SheetFactsSection extends PageSection {

    private final transient Sheet sheet;
    private final transient SheetRack rack;
    private final transient SignedIn who;
    private final transient Formatter figures;
    private final transient Runnable changed;

    /** @param changed told after something was kept */
    SheetFactsSection(Sheet sheet, FactsForm form, SheetRack rack, SignedIn who, Formatter figures, Runnable changed) {
        super(figures.text("sheets.enter.facts"));
        this.sheet = sheet;
        this.rack = rack;
        this.who = who;
        this.figures = figures;
        this.changed = changed;
        form.show(sheet.facts(), sheet.cost());
        form.withCost(!who.isMaker());
        Button save = new Button(figures.text("sheets.one.save"), event -> {
            if (Feedback.unlessRefused(
                    figures,
                    "sheets.one.saved",
                    () -> rack.change(sheet.id(), form.facts(), form.cost(), sheet.version(), who.name()))) {
                changed.run();
            }
        });
        save.addThemeVariants(ButtonVariant.PRIMARY);
        add(form, save);
        if (sheet.state() == SheetState.FREE) {
            add(reshape());
        }
    }

    private Component reshape() {
        Div place = new Div();
        Button open = new Button(figures.text("sheets.one.reshape"));
        open.addThemeVariants(ButtonVariant.TERTIARY);
        open.addClickListener(event -> {
            OutlineEditor editor = new OutlineEditor(figures, rack::requireReached);
            editor.start(sheet.outline());
            Button keep = new Button(
                    figures.text("sheets.one.keepshape"),
                    pressed -> editor.outline().ifPresent(outline -> {
                        if (Feedback.unlessRefused(
                                figures,
                                "sheets.one.saved",
                                () -> rack.reshape(sheet.id(), outline, sheet.version(), who.name()))) {
                            changed.run();
                        }
                    }));
            keep.addThemeVariants(ButtonVariant.PRIMARY);
            place.removeAll();
            place.add(editor, keep);
        });
        place.add(open);
        return place;
    }
}
