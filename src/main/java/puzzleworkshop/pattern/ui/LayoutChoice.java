package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import java.awt.geom.AffineTransform;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.geometry.Bounds;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PieceLayout;
import puzzleworkshop.pattern.shapes.PictureContour;
import puzzleworkshop.pattern.shapes.SizesApart;

/** Whether pieces differ in size, and what lines do about marked places of the picture: go around them or run along their edge. */
@StyleSheet("context://pattern.css")
public class LayoutChoice extends Div {

    private static final Length USUAL_WIDTH = Length.mm(24);

    private final transient Formatter figures;
    private final transient Runnable changed;
    private final Checkbox uneven = new Checkbox();
    private final Div rows = new Div();
    private final Button another = new Button();
    private final Checkbox byTapping = new Checkbox();
    private final List<MarkedPlaceRow> places = new ArrayList<>();
    private transient BiFunction<KeptWhole, Size, Optional<PictureContour>> edgeOf =
            (place, puzzle) -> Optional.empty();
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
            // in the middle of whatever size the puzzle has, until its fields say otherwise
            Size unit = Size.mm(200, 200);
            add(KeptWhole.face(Point.of(100, 100), USUAL_WIDTH), unit, false).forgetKept();
            this.changed.run();
        });
        byTapping.setLabel(getTranslation("pattern.layout.tap"));
        byTapping.setVisible(false);
        SmallText help = new SmallText(getTranslation("pattern.layout.keep.help"));
        add(uneven, help, byTapping, rows, another);
    }

    /** Only the one or the other part, on a page that is about it. */
    public void offer(boolean unevenPieces, boolean keptPlaces) {
        uneven.setVisible(unevenPieces);
        getChildren()
                .filter(child -> child != uneven && child != byTapping)
                .forEach(child -> child.setVisible(keptPlaces));
    }

    /** Offers to mark places by tapping a picture, which is otherwise there to be framed. */
    public void offerTapping() {
        byTapping.setVisible(true);
        byTapping.setId("mark-by-tapping");
    }

    public boolean isByTapping() {
        return byTapping.getValue();
    }

    /** What the edge of a marked place is, for lines that run along it; none while there is no picture. */
    public void followEdges(BiFunction<KeptWhole, Size, Optional<PictureContour>> edge) {
        edgeOf = edge;
    }

    /** Somebody tapped this place of the drawing: it is kept whole from now on. */
    public void mark(Point where, Size puzzle) {
        mark(KeptWhole.face(where, USUAL_WIDTH), puzzle, false);
    }

    /** One more place; beyond the most that a pattern takes none is added. */
    public void mark(KeptWhole place, Size puzzle, boolean along) {
        if (places.size() < PieceLayout.MOST_KEPT_WHOLE) {
            add(place, puzzle, along);
            changed.run();
        }
    }

    /**
     * Shows the layout of a pattern made before.
     *
     * @param shapes of it; those that follow marked places are shown as such
     * @return the others, which are no places of the picture
     */
    public List<PersonalShape> take(PieceLayout layout, List<PersonalShape> shapes, Size puzzle) {
        filling = true;
        uneven.setValue(layout.uneven());
        rows.removeAll();
        places.clear();
        layout.keptWhole().forEach(place -> add(place, puzzle, false));
        // as far as they stand last: in this order they are read from here again, and so draw the same pattern
        int others = shapes.size();
        while (others > 0 && isPlace(shapes.get(others - 1)) && places.size() < PieceLayout.MOST_KEPT_WHOLE) {
            others--;
        }
        for (PersonalShape shape : shapes.subList(others, shapes.size())) {
            Bounds bounds = shape.outline().bounds();
            KeptWhole place = new KeptWhole(bounds.centre(), bounds.width() / 2, bounds.height() / 2);
            add(place, puzzle, true).keepEdge(shape.outline(), shape.divided());
        }
        filling = false;
        return shapes.subList(0, others);
    }

    /** A piece along a marked place has no name of its own, and only such are divided. */
    private boolean isPlace(PersonalShape shape) {
        return shape.divided() || shape.name().equals(getTranslation("pattern.way.face"));
    }

    /** The picture lies otherwise: what is marked on it stays on it. */
    public void carry(UnaryOperator<KeptWhole> place, AffineTransform move, Size before, Size after) {
        filling = true;
        MarkedPlaceRow.Moved moved = new MarkedPlaceRow.Moved() {
            @Override
            public KeptWhole place(KeptWhole was) {
                return place.apply(was);
            }

            @Override
            public CurvePath edge(CurvePath was) {
                return was.transformed(move);
            }
        };
        places.stream().filter(MarkedPlaceRow::isFilledIn).forEach(row -> row.carry(moved, before, after));
        filling = false;
    }

    /** There is another picture below the places: its own edges are followed. */
    public void forgetEdges() {
        places.forEach(MarkedPlaceRow::forgetEdge);
    }

    public void setUneven(boolean differ) {
        filling = true;
        uneven.setValue(differ);
        filling = false;
    }

    /** With the places that lines go around. */
    public PieceLayout layout(Size puzzle) {
        return PieceLayout.of(
                uneven.getValue(),
                places.stream()
                        .filter(place -> place.isFilledIn() && !place.isAlong())
                        .map(place -> place.on(puzzle))
                        .toList());
    }

    /** The places whose edge is cut, each a piece of its own; beside each it is said where that is not the picture's edge. */
    public List<PersonalShape> followed(Size puzzle) {
        places.forEach(place -> place.say(""));
        return SizesApart.of(
                places.stream()
                        .filter(place -> place.isFilledIn() && place.isAlong())
                        .map(place -> new PersonalShape(
                                getTranslation("pattern.way.face"),
                                place.edge().orElseGet(() -> traced(place, puzzle)),
                                place.isDivided()))
                        .toList(),
                PatternSpec.USUAL_KERF);
    }

    private CurvePath traced(MarkedPlaceRow place, Size puzzle) {
        Optional<PictureContour> found = edgeOf.apply(place.on(puzzle), puzzle);
        if (!found.map(PictureContour::isOfPicture).orElse(false)) {
            place.say(getTranslation(found.isEmpty() ? "pattern.layout.no-picture" : "pattern.layout.hardly-an-edge"));
        }
        return found.map(PictureContour::outline)
                .orElseGet(() -> place.on(puzzle).outline());
    }

    private MarkedPlaceRow add(KeptWhole place, Size puzzle, boolean along) {
        MarkedPlaceRow[] row = new MarkedPlaceRow[1];
        row[0] = new MarkedPlaceRow(place, puzzle, along, figures, changed, () -> {
            places.remove(row[0]);
            rows.remove(row[0]);
            another.setEnabled(true);
            changed.run();
        });
        places.add(row[0]);
        rows.add(row[0]);
        another.setEnabled(places.size() < PieceLayout.MOST_KEPT_WHOLE);
        return row[0];
    }
}
