package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.NumberField;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.KeptWhole;

/** One place that was marked on the picture: where it lies, how wide it is, and what lines do about it. */
class MarkedPlaceRow extends Div {

    /** Where a place and an edge lie after the picture below them was laid otherwise. */
    interface Moved {
        KeptWhole place(KeptWhole before);

        CurvePath edge(CurvePath before);
    }

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
    private final SmallText followed = new SmallText("");
    /** As it was kept with an order, to the last bit, until it is changed here. */
    private transient KeptWhole kept;
    /** The edge that was followed, as it was kept or as it went along with the picture. */
    private transient Optional<CurvePath> edge = Optional.empty();

    private boolean filling;

    /**
     * @param place as it is kept, to the last bit, until a field is changed
     * @param along whether lines run along its edge
     * @param remove takes the row away
     */
    MarkedPlaceRow(KeptWhole place, Size puzzle, boolean along, Formatter figures, Runnable changed, Runnable remove) {
        this.changed = changed;
        addClassName("pattern-choices");
        width = new LengthField(getTranslation("pattern.layout.width"), figures.units());
        share(across, "pattern.shape.across");
        share(down, "pattern.shape.down");
        width.addValueChangeListener(event -> moved());
        lines.setLabel(getTranslation("pattern.way.marked"));
        lines.setItems(Lines.values());
        lines.setItemLabelGenerator(each -> getTranslation("pattern.way.marked." + each.name()));
        lines.setValue(along ? Lines.ALONG : Lines.AROUND);
        lines.addValueChangeListener(event -> {
            if (!filling) {
                changed.run();
            }
        });
        Button away = new Button(getTranslation("pattern.layout.remove"), event -> remove.run());
        away.addThemeVariants(ButtonVariant.TERTIARY);
        followed.addClassName("pattern-place-said");
        followed.setVisible(false);
        add(across, down, width, lines, away, followed);
        lay(place, puzzle);
    }

    /** With its lines along an edge that was followed before. */
    void keepEdge(CurvePath outline, boolean divided) {
        edge = Optional.of(outline);
        filling = true;
        lines.setValue(divided ? Lines.DIVIDED : Lines.ALONG);
        filling = false;
    }

    /** It lies elsewhere because the picture does. */
    void carry(Moved moved, Size before, Size after) {
        KeptWhole there = moved.place(on(before));
        edge = edge.map(moved::edge);
        lay(there, after);
    }

    private void lay(KeptWhole place, Size puzzle) {
        filling = true;
        across.setValue(share(place.middle().xMm() / puzzle.width().mm()));
        down.setValue(share(place.middle().yMm() / puzzle.height().mm()));
        width.setValue(Length.mm(Math.round(20 * place.halfWidthMm()) / 10.0));
        filling = false;
        kept = place;
    }

    private static double share(double whole) {
        return Math.round(1000 * whole) / 10.0;
    }

    private void share(NumberField field, String label) {
        field.setLabel(getTranslation(label));
        field.setMin(0);
        field.setMax(100);
        field.setStep(0.1);
        field.addValueChangeListener(event -> moved());
    }

    private void moved() {
        if (!filling) {
            forgetKept();
            changed.run();
        }
    }

    /** From now on its fields say where it lies. */
    void forgetKept() {
        kept = null;
        edge = Optional.empty();
    }

    /** On another picture there is another edge. */
    void forgetEdge() {
        edge = Optional.empty();
    }

    Optional<CurvePath> edge() {
        return edge;
    }

    /** What is cut along instead of the picture's edge, and why; nothing where it is that. */
    void say(String sentence) {
        followed.setText(sentence);
        followed.setVisible(!sentence.isEmpty());
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
