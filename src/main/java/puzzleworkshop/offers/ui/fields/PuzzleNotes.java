package puzzleworkshop.offers.ui.fields;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.pattern.judged.PictureAlikeness;
import puzzleworkshop.pattern.ui.FalseFitNote;
import puzzleworkshop.pattern.ui.SmallPartsNote;

/** What was worked out of the pieces: their grid, how hard the puzzle is, false fits and small parts. */
public class PuzzleNotes {

    private final Formatter figures;
    private final Span grid = new Span();
    private final Span hard = new Span();
    private final Div smallParts = new Div();
    private double alikeness = PictureAlikeness.USUAL;

    public PuzzleNotes(Formatter figures) {
        this.figures = figures;
        grid.addClassName("pw-small");
        hard.addClassName("pw-small");
        hard.setId("how-hard");
        smallParts.addClassName("pw-stack");
        // what a change of size or pieces does to it is said aloud
        smallParts.getElement().setAttribute("aria-live", "polite");
    }

    public Span grid() {
        return grid;
    }

    public Span hard() {
        return hard;
    }

    public Div smallParts() {
        return smallParts;
    }

    /** How alike neighbouring pieces of the picture look, as last worked out. */
    public double alikeness() {
        return alikeness;
    }

    public void clear() {
        grid.setText("");
        smallParts.removeAll();
    }

    /** @param years of the child that it is made for */
    public void show(Offer offer, Optional<Integer> years) {
        grid.setText(offer.pattern()
                .map(pattern -> figures.text(
                        "offers.new.grid",
                        pattern.pieces().size(),
                        pattern.spec().grid().columns(),
                        pattern.spec().grid().rows(),
                        pattern.spec().grid().pieceSize(offer.wish().puzzle().finished())))
                .orElse(""));
        alikeness = offer.hard().map(Offer.HowHard::alikeness).orElse(PictureAlikeness.USUAL);
        hard.setText(offer.hard()
                .map(found -> figures.text(
                        "offers.new.hard",
                        figures.text(found.difficulty().textKey()),
                        years.filter(age -> !found.difficulty().suits(age)).isEmpty() ? 1 : 2,
                        years.orElse(0)))
                .orElse(""));
        smallParts.removeAll();
        offer.pattern()
                .filter(FalseFitNote::isNeeded)
                .ifPresent(pattern -> smallParts.add(new FalseFitNote(pattern, figures)));
        offer.smallParts().ifPresent(verdict -> smallParts.add(new SmallPartsNote(verdict, figures)));
    }
}
