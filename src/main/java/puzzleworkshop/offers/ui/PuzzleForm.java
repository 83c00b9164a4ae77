package puzzleworkshop.offers.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.data.value.ValueChangeMode;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.random.RandomGenerator;
import java.util.stream.Stream;
import puzzleworkshop.boards.BoardChoice;
import puzzleworkshop.cutting.settings.BoardKind;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.geometry.Point;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.offers.Offer;
import puzzleworkshop.offers.PuzzleWish;
import puzzleworkshop.offers.ui.fields.FieldError;
import puzzleworkshop.offers.ui.fields.PiecesField;
import puzzleworkshop.offers.ui.fields.PuzzleNotes;
import puzzleworkshop.offers.ui.fields.SizeFields;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.preview.LaidPicture;
import puzzleworkshop.pattern.CutStyle;
import puzzleworkshop.pattern.IntendedAge;
import puzzleworkshop.pattern.KeptWhole;
import puzzleworkshop.pattern.PatternSpec;
import puzzleworkshop.pattern.PersonalShape;
import puzzleworkshop.pattern.PieceGrid;
import puzzleworkshop.pattern.PuzzleEdge;
import puzzleworkshop.pattern.judged.Difficulty;
import puzzleworkshop.pattern.shapes.PictureContour;
import puzzleworkshop.pattern.ui.LayoutChoice;
import puzzleworkshop.pattern.ui.ShapeChoice;
import puzzleworkshop.sheets.board.RackSettings;

/** What is made: size, pieces, cut, for whom, how many, from which kind of board. */
class PuzzleForm extends Div implements CustomerWishes.Taking {

    private static final int USUAL_PIECES = 48;

    /** What the form says, when all of it can be read. */
    record Form(PuzzleWish puzzle, int quantity, BoardKind board) {}

    private static final int MOST = 500;

    private final transient Formatter figures;
    private final SizeFields size;
    private final PiecesField pieces;
    private final PuzzleNotes notes;
    private final IntegerField years = new IntegerField();
    private final Select<CutStyle> style = new Select<>();
    private final Select<PuzzleEdge.Kind> edge = new Select<>();
    private final ShapeChoice shape;
    private final LayoutChoice layout;
    private final Note shapeRefused = Note.refusal();
    private final Checkbox tray = new Checkbox(getTranslation("offers.new.tray"));
    private final Select<IntendedAge> age = new Select<>();
    private final IntegerField quantity = new IntegerField(getTranslation("offers.new.quantity"));
    private final ComboBox<BoardKind> board = new ComboBox<>(getTranslation("offers.new.board"));
    private final FieldError sizeComplaint;
    private final FieldError piecesComplaint;
    private final FieldError ageComplaint;
    private final transient List<BoardKind> kinds;
    private final transient Length smallestPiece;
    private final transient Runnable changedByAge;
    private long seed = RandomGenerator.getDefault().nextLong(1, 1_000_000);
    private boolean filling;
    /** How the picture lay when marked places were last looked at. */
    private transient Optional<LaidPicture> laid = Optional.empty();

    PuzzleForm(RackSettings rack, BoardChoice choice, Formatter figures, Length smallestPiece, Runnable changed) {
        this.figures = figures;
        this.smallestPiece = smallestPiece;
        this.changedByAge = changed;
        addClassName("pw-section");
        sizeComplaint = new FieldError(Offer.Question.SIZE, figures);
        piecesComplaint = new FieldError(Offer.Question.PIECES, figures);
        ageComplaint = new FieldError(Offer.Question.AGE, figures);
        Runnable unlessFilling = () -> {
            if (!filling) {
                changed.run();
            }
        };
        size = new SizeFields(figures, unlessFilling);
        pieces = new PiecesField(unlessFilling);
        notes = new PuzzleNotes(figures);
        style.setLabel(getTranslation("orders.fact.style"));
        style.setItems(CutStyle.values());
        style.setItemLabelGenerator(s -> getTranslation("orders.style." + s.name()));
        style.setValue(CutStyle.KNOBS);
        style.addValueChangeListener(event -> unlessFilling.run());
        Button again = new Button(getTranslation("offers.new.other-lines"), event -> {
            seed = RandomGenerator.getDefault().nextLong(1, 1_000_000);
            unlessFilling.run();
        });
        again.addThemeVariants(ButtonVariant.TERTIARY);
        edge.setLabel(getTranslation("orders.fact.edge"));
        edge.setItems(PuzzleEdge.Kind.values());
        edge.setItemLabelGenerator(kind -> getTranslation("orders.edge." + kind.name()));
        edge.setValue(PuzzleEdge.Kind.SQUARE);
        edge.addValueChangeListener(event -> unlessFilling.run());
        shape = new ShapeChoice(figures, unlessFilling, this::refuseShape);
        layout = new LayoutChoice(figures, unlessFilling);
        layout.offerTapping();
        tray.addValueChangeListener(event -> unlessFilling.run());
        age.setLabel(getTranslation("orders.fact.age"));
        age.setItems(IntendedAge.values());
        age.setItemLabelGenerator(a -> getTranslation("orders.age." + a.name()));
        age.setValue(IntendedAge.FROM_6);
        age.addValueChangeListener(event -> unlessFilling.run());
        quantity.setMin(1);
        quantity.setMax(MOST);
        quantity.setStepButtonsVisible(true);
        quantity.setValue(1);
        quantity.setValueChangeMode(ValueChangeMode.LAZY);
        quantity.addValueChangeListener(event -> unlessFilling.run());
        kinds = choice.kinds();
        boards(rack);
        board.addValueChangeListener(event -> unlessFilling.run());

        Div form = new Div(pieces, style, edge, quantity, age, years, board);
        form.addClassName("pw-form");
        years.setLabel(getTranslation("offers.new.years"));
        years.setMin(Difficulty.YOUNGEST);
        years.setMax(Difficulty.OLDEST);
        years.setStepButtonsVisible(true);
        years.setPlaceholder(getTranslation("offers.new.years.any"));
        years.addValueChangeListener(event -> {
            if (event.isFromClient() && event.getValue() != null) {
                makeFor(event.getValue());
            }
        });
        Div choices = new Div(tray, again, notes.grid(), notes.hard());
        choices.addClassName("pw-row");
        add(
                new H2(getTranslation("orders.facts")),
                size,
                sizeComplaint,
                piecesComplaint,
                form,
                ageComplaint,
                shape,
                shapeRefused,
                layout,
                choices,
                notes.smallParts());
        filling = true;
        pieces.setItems(PieceGrid.offeredCounts(size.value().orElseThrow(), smallestPiece));
        pieces.setValue(USUAL_PIECES);
        filling = false;
    }

    private void boards(RackSettings rack) {
        board.setItems(kinds);
        board.setItemLabelGenerator(kind -> figures.text(
                "orders.board-kind",
                rack.materials().stream()
                        .filter(m -> m.id().equals(kind.material()))
                        .findFirst()
                        .map(m -> m.name())
                        .orElse(kind.material()),
                kind.thickness(),
                getTranslation("sheets.grade." + kind.grade())));
        board.setValue(kinds.isEmpty() ? null : kinds.getFirst());
    }

    /** What was drawn without an order. */
    void take(PatternSketches.Sketch sketch) {
        filling = true;
        take(sketch.spec());
        age.setValue(sketch.age());
        PatternSketches.board(kinds, sketch.spec()).ifPresent(board::setValue);
        filling = false;
    }

    @Override
    public Optional<Size> finished() {
        return size.value();
    }

    @Override
    public void take(List<CustomerWishes.Place> places, Optional<Integer> childsYears) {
        size.value().ifPresent(finished -> places.forEach(place -> layout.mark(place.kept(), finished, place.along())));
        childsYears.ifPresent(years::setValue);
        childsYears.ifPresent(this::makeFor);
    }

    /** A place of the picture or of the bare wood was tapped. */
    void tapped(double across, double down) {
        if (layout.isByTapping()) {
            size.value()
                    .ifPresent(finished -> layout.mark(
                            Point.of(
                                    across * finished.width().mm(),
                                    down * finished.height().mm()),
                            finished));
        }
    }

    /** Lines that run along a marked place follow the picture there. */
    void followEdges(BiFunction<KeptWhole, Size, Optional<PictureContour>> edge) {
        layout.followEdges(edge);
    }

    /**
     * Before the form is read: whoever frames the picture otherwise, or changes the size, finds what is marked on it where it
     * was. On another picture places stay where they were on the puzzle, and the edges there are looked for again.
     */
    void followPicture(Function<Size, Optional<LaidPicture>> picture) {
        Optional<LaidPicture> now = size.value().flatMap(picture);
        if (now.isEmpty() || now.equals(laid)) {
            return;
        }
        LaidPicture to = now.get();
        if (laid.filter(to::isSamePicture).isPresent()) {
            LaidPicture from = laid.get();
            layout.carry(place -> from.carried(place, to), from.movement(to), from.finished(), to.finished());
        } else {
            layout.forgetEdges();
        }
        laid = now;
    }

    private void take(PatternSpec spec) {
        size.take(spec.size());
        pieces.setValue(PatternSketches.wanted(spec));
        style.setValue(spec.style());
        edge.setValue(spec.outline().kind());
        shape.take(layout.take(spec.layout(), spec.shapes(), spec.size()), spec.size());
        seed = spec.seed();
    }

    /** @param picture as it lies on the puzzle of that order */
    void take(Order order, Function<Size, Optional<LaidPicture>> picture) {
        filling = true;
        laid = picture.apply(order.puzzle().finished());
        take(order.puzzle().pattern());
        tray.setValue(order.puzzle().tray());
        age.setValue(order.puzzle().age());
        quantity.setValue(order.quantity());
        board.setValue(order.board());
        filling = false;
    }

    /** Empty, with the field marked, while a number cannot be read. */
    Optional<Form> read() {
        Optional<Size> finished = size.read();
        boolean counted = quantity.getValue() != null && quantity.getValue() >= 1 && quantity.getValue() <= MOST;
        quantity.setInvalid(!counted);
        quantity.setErrorMessage(counted ? "" : figures.text("offers.new.quantity.missing", MOST));
        if (pieces.getValue() == null) {
            piecesComplaint.say(pieces.complaint());
        }
        if (board.getValue() == null) {
            piecesComplaint.say(getTranslation("offers.new.board.missing"));
        }
        if (finished.isEmpty() || !counted || pieces.getValue() == null || board.getValue() == null) {
            return Optional.empty();
        }
        List<PersonalShape> shapes;
        try {
            shapes = Stream.concat(shape.shapes(finished.get()).stream(), layout.followed(finished.get()).stream())
                    .toList();
        } catch (Refused refused) {
            refuseShape(figures.say(refused));
            return Optional.empty();
        }
        refuseShape("");
        PuzzleWish wish = new PuzzleWish(
                finished.get(),
                pieces.getValue(),
                style.getValue(),
                PuzzleEdge.usual(edge.getValue()),
                seed,
                age.getValue(),
                tray.getValue(),
                shapes,
                PatternSpec.DESIGN,
                layout.layout(finished.get()));
        return Optional.of(new Form(wish, quantity.getValue(), board.getValue()));
    }

    /** The most pieces, and how they meet, that are not too hard for a child of this age with this picture. */
    private void makeFor(int childsYears) {
        if (size.value().isEmpty()) {
            return;
        }
        try {
            Difficulty.ForAge found =
                    Difficulty.forAge(childsYears, size.value().get(), notes.alikeness(), smallestPiece);
            boolean before = filling;
            filling = true;
            pieces.setValue(found.grid().pieces());
            style.setValue(found.style());
            age.setValue(IntendedAge.from(childsYears));
            filling = before;
            changedByAge.run();
        } catch (Refused refused) {
            piecesComplaint.say(figures.say(refused));
        }
    }

    private void refuseShape(String sentence) {
        shapeRefused.setText(sentence);
        shapeRefused.setVisible(!sentence.isEmpty());
    }

    /** What is wrong with a field stays said; what was worked out goes. */
    void clearAnswer() {
        notes.clear();
    }

    void show(Offer offer) {
        sizeComplaint.show(offer);
        piecesComplaint.show(offer);
        ageComplaint.show(offer);
        notes.show(offer, Optional.ofNullable(years.getValue()));
    }
}
