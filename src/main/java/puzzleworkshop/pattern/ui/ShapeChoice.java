package puzzleworkshop.pattern.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.NumberField;
import com.vaadin.flow.component.textfield.TextField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import puzzleworkshop.cutfiles.found.Remark;
import puzzleworkshop.cutfiles.reading.DrawnFile;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.fields.FileUpload;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PersonalShapes;

/** Which personal shape lies among the pieces, how large, and where (in shares of the puzzle's width and height). */
@StyleSheet("context://pattern.css")
public class ShapeChoice extends Div {

    private enum Kind {
        NONE,
        HEART,
        LETTER,
        FILE,
        KEPT
    }

    private static final List<Kind> FRESH = List.of(Kind.NONE, Kind.HEART, Kind.LETTER, Kind.FILE);

    private static final int MIDDLE = 50;
    private static final double USUAL_SIZE_MM = 60;

    private final Select<Kind> kind = new Select<>();
    private final TextField letter = new TextField();
    private final LengthField size;
    private final NumberField across = new NumberField();
    private final NumberField down = new NumberField();
    private final FileUpload upload;
    private final Note notSure = Note.hidden(Note.Kind.WARN);
    private transient Optional<DrawnFile> file = Optional.empty();
    private transient Optional<PersonalShape> kept = Optional.empty();
    /** Further ones that were kept with it; they stay where they are. */
    private transient List<PersonalShape> keptBeside = List.of();

    /** @param refuse shows why a file was not taken */
    public ShapeChoice(Formatter figures, Runnable changed, java.util.function.Consumer<String> refuse) {
        addClassName("pattern-choices");
        kind.setLabel(getTranslation("pattern.shape.kind"));
        kind.setItems(FRESH);
        kind.setItemLabelGenerator(k -> k == Kind.KEPT
                ? getTranslation(
                        "pattern.shape.kind.KEPT",
                        Stream.concat(kept.stream(), keptBeside.stream())
                                .map(PersonalShape::name)
                                .collect(Collectors.joining(", ")))
                : getTranslation("pattern.shape.kind." + k.name()));
        kind.setValue(Kind.NONE);
        letter.setLabel(getTranslation("pattern.shape.letter"));
        letter.setMaxLength(2);
        letter.setValueChangeMode(ValueChangeMode.LAZY);
        size = new LengthField(getTranslation("pattern.shape.size"), figures.units());
        size.setValue(Length.mm(USUAL_SIZE_MM));
        share(across, "pattern.shape.across", changed);
        share(down, "pattern.shape.down", changed);
        upload = new FileUpload(
                        figures,
                        DrawnFile.MOST_BYTES,
                        refuse,
                        received -> {
                            DrawnFile drawn = DrawnFile.read(received.name(), received.content());
                            return () -> {
                                file = Optional.of(drawn);
                                say(drawn, figures);
                                changed.run();
                            };
                        },
                        ".svg",
                        ".dxf")
                .labelled(getTranslation("pattern.choose-file"), getTranslation("pattern.check.drop"));
        kind.addValueChangeListener(event -> {
            reveal();
            changed.run();
        });
        letter.addValueChangeListener(event -> changed.run());
        size.addValueChangeListener(event -> changed.run());
        add(kind, letter, size, across, down, upload, notSure);
        reveal();
    }

    void beginWithHeart() {
        kind.setValue(Kind.HEART);
    }

    /** Shows the shape of a pattern made before; it stays as it is until something is changed. */
    public void take(List<PersonalShape> shapes, Size puzzle) {
        kept = shapes.stream().findFirst();
        keptBeside = shapes.stream().skip(1).toList();
        kind.setItems(kept.isPresent() ? List.of(Kind.values()) : FRESH);
        kind.setValue(kept.isPresent() ? Kind.KEPT : Kind.NONE);
        kept.map(shape -> shape.outline().bounds()).ifPresent(bounds -> {
            size.setValue(Length.mm(Math.max(bounds.width(), bounds.height())));
            across.setValue(100 * bounds.centre().xMm() / puzzle.width().mm());
            down.setValue(100 * bounds.centre().yMm() / puzzle.height().mm());
        });
        reveal();
    }

    /** What of the file is not sure is said where it was chosen: its largest closed line becomes a piece. */
    private void say(DrawnFile drawn, Formatter figures) {
        String words = drawn.remarks().stream()
                .filter(remark -> remark.kind() == Remark.Kind.UNSURE)
                .map(remark -> figures.say(remark.sentence()))
                .collect(Collectors.joining(" "));
        notSure.setText(words);
        notSure.setVisible(!words.isEmpty());
    }

    private void share(NumberField field, String label, Runnable changed) {
        field.setLabel(getTranslation(label));
        field.setMin(0);
        field.setMax(2 * MIDDLE);
        field.setStep(5);
        field.setStepButtonsVisible(true);
        // the buttons go in steps of five; what is typed or was kept may lie between
        field.setManualValidation(true);
        field.setValue((double) MIDDLE);
        field.addValueChangeListener(event -> changed.run());
    }

    private void reveal() {
        boolean some = kind.getValue() != Kind.NONE;
        letter.setVisible(kind.getValue() == Kind.LETTER);
        upload.setVisible(kind.getValue() == Kind.FILE);
        notSure.setVisible(kind.getValue() == Kind.FILE && !notSure.getText().isEmpty());
        size.setVisible(some);
        across.setVisible(some);
        down.setVisible(some);
    }

    /** @throws Refused when the letter or the file has no outline to cut */
    public List<PersonalShape> shapes(Size puzzle) {
        Length wanted = size.getValue();
        if (wanted == null || !wanted.isPositive()) {
            return List.of();
        }
        Point middle =
                Point.of(puzzle.width().mm() * of(across), puzzle.height().mm() * of(down));
        return switch (kind.getValue()) {
            case NONE -> List.of();
            case HEART -> List.of(PersonalShapes.heart(middle, wanted));
            case LETTER ->
                letter.getValue().isBlank()
                        ? List.of()
                        : List.of(
                                PersonalShapes.letter(letter.getValue().strip().codePointAt(0), middle, wanted));
            case KEPT ->
                Stream.concat(
                                kept.map(shape -> PersonalShapes.placed(shape, middle, wanted)).stream(),
                                keptBeside.stream())
                        .toList();
            case FILE ->
                file.map(drawn -> List.of(PersonalShapes.imported(drawn, middle, wanted, wanted)))
                        .orElse(List.of());
        };
    }

    private static double of(NumberField share) {
        return share.getValue() == null ? 0.5 : share.getValue() / 100;
    }
}
