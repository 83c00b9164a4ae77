package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.NumberField;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.KeptWhole;

/** One place that was marked on the picture: where it lies, how wide it is, and what lines do about it. */
class MarkedPlaceRow extends Div {

    private enum Lines {
        /** No line cuts it. */
        AROUND,
        /** Its edge is cut, within it nothing is. */
        ALONG,
        /** Its edge is cut, and lines go on within it. */
        DIVIDED
    }

    private final NumberField across = new NumberField();
    private final NumberField down = new NumberField();
    private final LengthField width;
    private final Select<Lines> lines = new Select<>();
    private final transient Runnable changed;
    /** As it was kept with an order, to the last bit, until it is changed here. */
    private transient KeptWhole kept;

    /**
     * @param place as it is kept, to the last bit, until a field is changed
     * @param along whether lines run along its edge
     * @param remove takes the row away
     */
    MarkedPlaceRow(KeptWhole place, Size puzzle, boolean along, Formatter figures, Runnable changed, Runnable remove) {
        this.changed = changed;
        addClassName("pattern-choices");
        width = new LengthField(getTranslation("pattern.layout.width"), figures.units());
        share(
                across,
                "pattern.shape.across",
                place.middle().xMm() / puzzle.width().mm());
        share(down, "pattern.shape.down", place.middle().yMm() / puzzle.height().mm());
        width.setValue(Length.mm(Math.round(20 * place.halfWidthMm()) / 10.0));
        width.addValueChangeListener(event -> moved());
        lines.setLabel(getTranslation("pattern.way.marked"));
        lines.setItems(Lines.values());
        lines.setItemLabelGenerator(each -> getTranslation("pattern.way.marked." + each.name()));
        lines.setValue(along ? Lines.ALONG : Lines.AROUND);
        lines.addValueChangeListener(event -> changed.run());
        Button away = new Button(getTranslation("pattern.layout.remove"), event -> remove.run());
        away.addThemeVariants(ButtonVariant.TERTIARY);
        add(across, down, width, lines, away);
        kept = place;
    }

    private void share(NumberField field, String label, double share) {
        field.setLabel(getTranslation(label));
        field.setMin(0);
        field.setMax(100);
        field.setStep(0.1);
        field.setValue(Math.round(1000 * share) / 10.0);
        field.addValueChangeListener(event -> moved());
    }

    private void moved() {
        forgetKept();
        changed.run();
    }

    /** From now on its fields say where it lies. */
    void forgetKept() {
        kept = null;
    }

    boolean isFilledIn() {
        return across.getValue() != null
                && down.getValue() != null
                && width.getValue() != null
                && width.getValue().isPositive();
    }

    boolean isAlong() {
        return lines.getValue() != Lines.AROUND;
    }

    boolean isDivided() {
        return lines.getValue() == Lines.DIVIDED;
    }

    KeptWhole on(Size puzzle) {
        return kept != null
                ? kept
                : KeptWhole.face(
                        Point.of(
                                puzzle.width().mm() * across.getValue() / 100,
                                puzzle.height().mm() * down.getValue() / 100),
                        width.getValue());
    }
}
