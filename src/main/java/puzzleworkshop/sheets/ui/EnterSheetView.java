package puzzleworkshop.sheets.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.Key;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.JavaScript;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.tabs.Tab;
import com.vaadin.flow.router.PageTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import puzzleworkshop.artwork.Photos;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.TabRow;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.display.fields.LengthField;
import puzzleworkshop.geometry.ImpossibleOutline;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.MeasuredOutlines;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.ui.photo.PhotoEntry;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/**
 * Takes boards in, one after the other: two numbers and the enter key for a rectangle, then the next. What is said about
 * the board stays as it was for the piece before.
 */
@Route("sheets/enter")
@PageTitle("Enter sheets")
@PermitAll
@StyleSheet("context://sheets.css")
@JavaScript("context://sheets-entry.js")
public class EnterSheetView extends Div {

    /** The photo stands second: a phone shows two or three without scrolling, and it is the phone that takes it. */
    private static final List<String> KINDS = List.of("rectangle", "photo", "elbow", "bay", "drawn");

    private final transient SheetRack rack;
    private final transient Formatter figures;
    private final transient RackLabels words;
    private final transient SignedIn who;
    private final transient MeasuredOutlines measured;
    private final transient Photos photos;
    private final FactsForm facts;
    private final Div shape = new Div();
    private final Div taken = new Div();
    private final Span count = new Span();
    private final Div last = new Div();
    private final Note fault = Note.refusal();
    private int entered;

    /** Of the board that is being entered; the next one gets a key of its own. */
    private transient BookingKey key = BookingKey.fresh();

    private transient Supplier<Optional<Outline>> outline;
    private transient Runnable ready;
    private transient Function<Outline, SheetId> adding;

    public EnterSheetView(
            SheetRack rack,
            RackSettings settings,
            Workshop workshop,
            SignedIn who,
            Formatter figures,
            RackLabels words,
            MeasuredOutlines measured,
            Photos photos) {
        this.rack = rack;
        this.measured = measured;
        this.photos = photos;
        this.figures = figures;
        this.words = words;
        this.who = who;
        this.facts = new FactsForm(figures, settings, rack, workshop);
        facts.withCost(!who.isMaker());
        addClassName("pw-page");
        PageHead head = new PageHead(figures.text("sheets.enter.title"), count);
        count.addClassName("pw-soft");
        shape.addClassName("sheets-shape");
        taken.addClassName("sheets-taken");
        last.getElement().setAttribute("role", "status");
        last.addClassName("sheets-last");
        last.setVisible(false);
        Div shapes = new Div(kinds(), shape, fault, takeIn(), last);
        shapes.addClassName("pw-section");
        PageSection about = new PageSection(figures.text("sheets.enter.facts"), facts);
        Div columns = new Div(shapes, about);
        columns.addClassName("sheets-enter");
        add(head, words.doors("/enter"), columns, taken);
    }

    private Component kinds() {
        TabRow kinds = new TabRow();
        for (String kind : KINDS) {
            kinds.add(new Tab(figures.text("sheets.enter." + kind)));
        }
        kinds.addSelectedChangeListener(event -> choose(KINDS.get(kinds.getSelectedIndex())));
        choose(KINDS.getFirst());
        return kinds;
    }

    private void choose(String kind) {
        fault.setVisible(false);
        shape.removeAll();
        adding = made -> rack.enter(key, made, facts.facts(), facts.cost(), who.name());
        switch (kind) {
            case "rectangle" ->
                measured(
                        "rectangle",
                        lengths -> Outline.rectangle(new Size(lengths.get(0), lengths.get(1))),
                        "width",
                        "height");
            case "elbow" ->
                measured(
                        "elbow",
                        lengths -> ShapeSteps.elbow(lengths.get(0), lengths.get(1), lengths.get(2), lengths.get(3)),
                        "width",
                        "height",
                        "cutwidth",
                        "cutheight");
            case "bay" ->
                measured(
                        "bay",
                        lengths -> ShapeSteps.bay(
                                lengths.get(0), lengths.get(1), lengths.get(2), lengths.get(3), lengths.get(4)),
                        "width",
                        "height",
                        "leftarm",
                        "baywidth",
                        "baydepth");
            case "photo" -> {
                PhotoEntry photo = new PhotoEntry(
                        figures, measured, photos, who, () -> facts.facts().thickness());
                shape.add(photo);
                outline = photo::outline;
                ready = photo::next;
                adding = made ->
                        measured.enter(key, made, photo.uncertaintyMm(), facts.facts(), facts.cost(), who.name());
            }
            default -> {
                OutlineEditor editor = new OutlineEditor(figures, rack::requireReached);
                shape.add(editor);
                outline = editor::outline;
                ready = editor::clear;
            }
        }
    }

    private void measured(String kind, Function<List<Length>, Outline> make, String... names) {
        List<LengthField> fields = java.util.Arrays.stream(names)
                .map(name -> new LengthField(figures.text("sheets.steps." + name), figures.units()))
                .toList();
        Div row = new Div(fields.toArray(Component[]::new));
        row.addClassNames("pw-row", "sheets-numbers");
        SheetDrawing preview = new SheetDrawing(figures);
        preview.addClassName("sheets-preview");
        for (LengthField field : fields) {
            field.addValueChangeListener(event -> preview(fields, make, preview));
        }
        example(kind, make, fields.size(), preview);
        shape.add(row, preview);
        outline = () -> read(fields).map(lengths -> reached(make.apply(lengths), preview));
        ready = () -> {
            fields.forEach(field -> field.setValue(null));
            example(kind, make, fields.size(), preview);
            row.getElement().executeJs("pwSheetsEntry.first(this)");
        };
        row.getElement()
                .executeJs(
                        // the script may come after the field
                        "const go = () => window.pwSheetsEntry ? (pwSheetsEntry.chain(this),"
                                + " pwSheetsEntry.first(this)) : setTimeout(go, 50); setTimeout(go, 50)");
    }

    /** Marks the spot before the refusal is told. */
    private Outline reached(Outline made, SheetDrawing preview) {
        try {
            rack.requireReached(made);
        } catch (ImpossibleOutline impossible) {
            impossible.spot().ifPresent(spot -> preview.refused(made, figures.text("sheets.enter.preview"), spot));
            throw impossible;
        }
        return made;
    }

    /** Before anything is typed, a drawing of the kind of shape shows which length is which. */
    private void example(String kind, Function<List<Length>, Outline> make, int count, SheetDrawing preview) {
        List<Length> lengths = kind.equals("bay")
                ? List.of(Length.mm(400), Length.mm(240), Length.mm(110), Length.mm(160), Length.mm(120))
                : List.of(Length.mm(400), Length.mm(240), Length.mm(180), Length.mm(110))
                        .subList(0, count);
        preview.addClassName("sheets-example");
        preview.show(make.apply(lengths), figures.text("sheets.enter." + kind), null);
    }

    private void preview(List<LengthField> fields, Function<List<Length>, Outline> make, SheetDrawing preview) {
        if (fields.stream()
                .allMatch(field -> field.getValue() != null && field.getValue().isPositive())) {
            try {
                preview.show(
                        make.apply(fields.stream().map(LengthField::getValue).toList()),
                        figures.text("sheets.enter.preview"),
                        null);
                preview.removeClassName("sheets-example");
            } catch (Refused notYet) {
                preview.addClassName("sheets-example");
            }
        }
    }

    /** Empty when a length is missing: its field is marked and has the cursor. */
    private Optional<List<Length>> read(List<LengthField> fields) {
        Optional<LengthField> missing = Optional.empty();
        for (LengthField field : fields) {
            boolean wrong = field.getValue() == null || !field.getValue().isPositive();
            field.setInvalid(wrong);
            field.setErrorMessage(wrong ? figures.text("sheets.editor.nolength") : "");
            missing = wrong && missing.isEmpty() ? Optional.of(field) : missing;
        }
        if (missing.isPresent()) {
            missing.get().getElement().executeJs("this.querySelector('input').focus()");
            return Optional.empty();
        }
        return Optional.of(fields.stream().map(LengthField::getValue).toList());
    }

    private Component takeIn() {
        Button take = new Button(figures.text("sheets.enter.take"), event -> {
            // the second press of a double click finds the fields empty and is meant for nothing
            if (event.getClickCount() < 2) {
                take();
            }
        });
        take.addThemeVariants(ButtonVariant.PRIMARY);
        take.addClassName("sheets-take");
        take.addClickShortcut(Key.ENTER).listenOn(shape);
        return take;
    }

    private void take() {
        fault.setVisible(false);
        try {
            Optional<Outline> made = outline.get();
            if (made.isPresent()) {
                SheetId id = adding.apply(made.get());
                key = BookingKey.fresh();
                entered++;
                count.setText(figures.text("sheets.enter.count", entered));
                rack.find(id).ifPresent(this::show);
                facts.forgetCost();
                ready.run();
            }
        } catch (Refused refused) {
            fault.setText(figures.say(refused));
            fault.setVisible(true);
        }
    }

    private void show(Sheet sheet) {
        Anchor link = new Anchor(
                "sheets/number/" + sheet.id(),
                figures.text("sheets.enter.done", sheet.id().toString()));
        Span size = new Span(words.shape(sheet));
        size.addClassName("pw-soft");
        Div line = new Div(new SheetDrawing(figures).show(sheet), new Div(link, size));
        line.addClassName("sheets-taken-line");
        taken.addComponentAsFirst(line);
        last.setVisible(true);
        last.removeAll();
        last.add(
                new Span(figures.text("sheets.enter.write", words.shape(sheet))),
                new Span(sheet.id().toString()),
                mistake(sheet, line));
    }

    private Button mistake(Sheet sheet, Div line) {
        Button mistake = new Button(figures.text("sheets.enter.mistake"), event -> {
            if (Feedback.unlessRefused(
                    figures,
                    "sheets.enter.mistaken",
                    () -> rack.scrap(sheet.id(), figures.text("sheets.enter.mistyped"), who.name()))) {
                taken.remove(line);
                last.setVisible(false);
                entered--;
                count.setText(figures.text("sheets.enter.count", entered));
                ready.run();
            }
        });
        mistake.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        return mistake;
    }
}
