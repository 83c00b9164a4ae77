package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.textfield.NumberField;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.PieceLayout;

/** Whether pieces differ in size, and which places of the picture no line may cut. */
@StyleSheet("context://pattern.css")
public class LayoutChoice extends Div {

    /** A face is a little higher than wide. */
    private static final double HIGHER = 1.3;

    private static final double USUAL_WIDTH_MM = 24;

    private final transient Formatter figures;
    private final transient Runnable changed;
    private final Checkbox uneven = new Checkbox();
    private final Div rows = new Div();
    private final Button another = new Button();
    private final List<Place> places = new ArrayList<>();
    private boolean filling;

    public LayoutChoice(Formatter figures, Runnable changed) {
        this.figures = figures;
        this.changed = () -> {
            if (!filling) {
                changed.run();
            }
        };
        addClassName("pattern-layout");
        uneven.setLabel(getTranslation("pattern.layout.uneven"));
        uneven.addValueChangeListener(event -> this.changed.run());
        another.setText(getTranslation("pattern.layout.keep"));
        another.addThemeVariants(ButtonVariant.TERTIARY);
        another.addClickListener(event -> {
            add(50, 50, USUAL_WIDTH_MM);
            this.changed.run();
        });
        SmallText help = new SmallText(getTranslation("pattern.layout.keep.help"));
        add(uneven, help, rows, another);
    }

    /** Only the one or the other part, on a page that is about it. */
    public void offer(boolean unevenPieces, boolean keptPlaces) {
        uneven.setVisible(unevenPieces);
        getChildren().filter(child -> child != uneven).forEach(child -> child.setVisible(keptPlaces));
    }

    /** Somebody tapped this place of the drawing: it is kept whole from now on. */
    public void mark(Point where, Size puzzle) {
        add(
                100 * where.xMm() / puzzle.width().mm(),
                100 * where.yMm() / puzzle.height().mm(),
                USUAL_WIDTH_MM);
        changed.run();
    }

    /** Shows the layout of a pattern made before. */
    public void take(PieceLayout layout, Size puzzle) {
        filling = true;
        uneven.setValue(layout.uneven());
        rows.removeAll();
        places.clear();
        for (KeptWhole place : layout.keptWhole()) {
            add(
                            100 * place.middle().xMm() / puzzle.width().mm(),
                            100 * place.middle().yMm() / puzzle.height().mm(),
                            2 * place.halfWidthMm())
                    .kept = place;
        }
        filling = false;
    }

    public void setUneven(boolean differ) {
        filling = true;
        uneven.setValue(differ);
        filling = false;
    }

    public PieceLayout layout(Size puzzle) {
        return PieceLayout.of(uneven.getValue(), places(puzzle));
    }

    public List<KeptWhole> places(Size puzzle) {
        return places.stream()
                .filter(Place::isFilledIn)
                .map(place -> place.on(puzzle))
                .toList();
    }

    private Place add(double acrossPercent, double downPercent, double widthMm) {
        Place place = new Place(acrossPercent, downPercent, widthMm);
        places.add(place);
        rows.add(place);
        another.setEnabled(places.size() < PieceLayout.MOST_KEPT_WHOLE);
        return place;
    }

    private final class Place extends Div {
        private final NumberField across = new NumberField();
        private final NumberField down = new NumberField();
        private final LengthField width;
        /** As it was kept with an order, to the last bit, until it is changed here. */
        private transient KeptWhole kept;

        Place(double acrossPercent, double downPercent, double widthMm) {
            addClassName("pattern-choices");
            width = new LengthField(getTranslation("pattern.layout.width"), figures.units());
            share(across, "pattern.shape.across", acrossPercent);
            share(down, "pattern.shape.down", downPercent);
            width.setValue(Length.mm(widthMm));
            width.addValueChangeListener(event -> moved());
            Button remove = new Button(getTranslation("pattern.layout.remove"), event -> {
                places.remove(this);
                rows.remove(this);
                another.setEnabled(true);
                changed.run();
            });
            remove.addThemeVariants(ButtonVariant.TERTIARY);
            add(across, down, width, remove);
        }

        private void share(NumberField field, String label, double percent) {
            field.setLabel(getTranslation(label));
            field.setMin(0);
            field.setMax(100);
            field.setStep(0.1);
            field.setValue(Math.round(10 * percent) / 10.0);
            field.addValueChangeListener(event -> moved());
        }

        private void moved() {
            kept = null;
            changed.run();
        }

        boolean isFilledIn() {
            return across.getValue() != null
                    && down.getValue() != null
                    && width.getValue() != null
                    && width.getValue().isPositive();
        }

        KeptWhole on(Size puzzle) {
            if (kept != null) {
                return kept;
            }
            double half = width.getValue().mm() / 2;
            return new KeptWhole(
                    Point.of(
                            puzzle.width().mm() * across.getValue() / 100,
                            puzzle.height().mm() * down.getValue() / 100),
                    half,
                    half * HIGHER);
        }
    }
}
