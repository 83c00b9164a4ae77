package puzzleworkshop.boards.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.sheets.ui.BlankForm;
import puzzleworkshop.sheets.ui.SheetDrawing;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/** A free sheet: does a blank fit, and where? Or the sheet goes. */
final class FreeSheetSection extends PageSection {

    private final transient Sheet sheet;
    private final transient SheetFinder finder;
    private final transient Formatter figures;

    /** @param gone told after the sheet was given up */
    FreeSheetSection(
            Sheet sheet,
            SheetFinder finder,
            RackSettings settings,
            Workshop workshop,
            SheetRack rack,
            SignedIn who,
            Formatter figures,
            Runnable gone) {
        super(figures.text("sheets.one.fits"));
        this.sheet = sheet;
        this.finder = finder;
        this.figures = figures;
        Paragraph answer = new Paragraph();
        answer.getElement().setAttribute("aria-live", "polite");
        Div drawn = new Div();
        BlankForm[] form = new BlankForm[1];
        form[0] = new BlankForm(figures, settings, workshop, () -> {
            drawn.removeAll();
            answer.setText(form[0].wish().map(wish -> answerFor(wish, drawn)).orElse(""));
        });
        Button scrap = new Button(figures.text("sheets.one.scrap"), event -> {
            if (Feedback.unlessRefused(figures, "sheets.one.scrapped", () -> rack.scrap(sheet.id(), "", who.name()))) {
                gone.run();
            }
        });
        scrap.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.ERROR);
        add(form[0], answer, drawn, scrap);
    }

    private String answerFor(BlankWish wish, Div drawn) {
        finder.on(sheet.id(), wish).ifPresent(place -> drawn.add(new SheetDrawing(figures).show(place)));
        return figures.say(finder.whyNot(sheet.id(), wish));
    }
}
