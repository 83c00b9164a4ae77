package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.LargeShapes;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PersonalShapes;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pattern.shapes.SizesApart;

/** What is asked on the page of one way to cut, beside what every page asks. */
class WayFields extends Div {

    private static final int MOST_SHAPES = 24;

    private final CutWay way;
    private final transient Formatter figures;
    private final transient Runnable changed;
    private final transient Consumer<String> refuse;
    private final LayoutChoice layout;
    private final List<ShapeChoice> shapes = new ArrayList<>();
    private final Div shapeRows = new Div();
    private final TextField name = new TextField();
    private final LengthField letters;
    private final NumberField down = new NumberField();
    private final IntegerField large = new IntegerField();

    WayFields(CutWay way, Formatter figures, Runnable changed, Consumer<String> refuse) {
        this.way = way;
        this.figures = figures;
        this.changed = changed;
        this.refuse = refuse;
        layout = new LayoutChoice(figures, changed);
        letters = new LengthField(getTranslation("pattern.way.letters"), figures.units());
        addClassNames("pw-stack", "pattern-way");
        Paragraph lead = new Paragraph(getTranslation("pattern.way." + way.name() + ".lead"));
        add(lead);
        switch (way) {
            case PLAIN, ROUND, HEART -> {}
            case UNEVEN -> layout.setUneven(true);
            case FACES -> faces();
            case SHAPES -> shapes();
            case NAME -> name();
            case CHILDREN -> children();
        }
    }

    private void faces() {
        layout.offer(false, true);
        add(layout);
    }

    private void shapes() {
        Button another = new Button(getTranslation("pattern.way.another"), event -> {
            anotherShape();
            changed.run();
        });
        another.addThemeVariants(ButtonVariant.TERTIARY);
        shapeRows.addClassName("pw-stack");
        anotherShape();
        // the page shows what it is about
        shapes.getFirst().beginWithHeart();
        add(shapeRows, another);
    }

    private void anotherShape() {
        if (shapes.size() < MOST_SHAPES) {
            ShapeChoice choice = new ShapeChoice(figures, changed, refuse);
            shapes.add(choice);
            shapeRows.add(choice);
        }
    }

    private void name() {
        name.setLabel(getTranslation("pattern.way.name"));
        name.setMaxLength(MOST_SHAPES);
        name.setValueChangeMode(ValueChangeMode.LAZY);
        name.addValueChangeListener(event -> changed.run());
        letters.setValue(Length.mm(45));
        letters.addValueChangeListener(event -> changed.run());
        down.setLabel(getTranslation("pattern.shape.down"));
        down.setMin(0);
        down.setMax(100);
        down.setStep(5);
        down.setStepButtonsVisible(true);
        down.setManualValidation(true);
        down.setValue(50.0);
        down.addValueChangeListener(event -> changed.run());
        Div row = new Div(name, letters, down);
        row.addClassName("pattern-choices");
        add(row);
    }

    private void children() {
        large.setLabel(getTranslation("pattern.way.large"));
        large.setMin(0);
        large.setMax(8);
        large.setStepButtonsVisible(true);
        large.setValue(2);
        large.addValueChangeListener(event -> changed.run());
        Div row = new Div(large);
        row.addClassName("pattern-choices");
        add(row);
    }

    /** A place of the drawing was tapped. */
    void tapped(Point where, Size puzzle) {
        if (way == CutWay.FACES) {
            layout.mark(where, puzzle);
        }
    }

    /** @throws puzzleworkshop.measure.Refused when a letter or file has no outline to cut */
    PatternSpec on(PatternSpec plain) {
        Size size = plain.size();
        return switch (way) {
            case PLAIN -> plain;
            case UNEVEN -> plain.withLayout(layout.layout(size));
            case FACES -> plain.withLayout(layout.layout(size)).withShapes(layout.followed(size));
            case ROUND -> plain.withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.ROUND));
            case HEART -> plain.withOutline(PuzzleEdge.usual(PuzzleEdge.Kind.HEART));
            case SHAPES ->
                plain.withShapes(shapes.stream()
                        .flatMap(choice -> choice.shapes(size).stream())
                        .toList());
            case NAME -> plain.withShapes(SizesApart.of(letters(plain), plain.kerf()));
            case CHILDREN ->
                plain.withShapes(SizesApart.of(
                        LargeShapes.laid(size, plain.grid(), large.getValue() == null ? 0 : large.getValue()),
                        plain.kerf()));
        };
    }

    private List<PersonalShape> letters(PatternSpec plain) {
        if (name.getValue().isBlank()
                || letters.getValue() == null
                || !letters.getValue().isPositive()) {
            return List.of();
        }
        Size size = plain.size();
        double share = down.getValue() == null ? 0.5 : down.getValue() / 100;
        return PersonalShapes.name(
                name.getValue().strip(),
                Point.of(size.width().mm() / 2, size.height().mm() * share),
                letters.getValue(),
                Length.mm(1.02 * plain.grid().pieceSize(size).shorterSide().mm()));
    }
}
