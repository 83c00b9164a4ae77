package puzzleworkshop.boards.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.router.BeforeEvent;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.HasUrlParameter;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.boards.BoardCuts;
import puzzleworkshop.boards.OrderBoards;
import puzzleworkshop.boards.WhatIsLeft;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Length;
import puzzleworkshop.sheets.MeasuredOutlines;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.SheetState;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.LearnedSizes;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.sheets.list.SheetLabels;
import puzzleworkshop.sheets.list.StockTaking;
import puzzleworkshop.sheets.ui.FactsForm;
import puzzleworkshop.sheets.ui.RackLabels;
import puzzleworkshop.sheets.ui.SheetDrawing;
import puzzleworkshop.sheets.ui.SheetPhoto;
import puzzleworkshop.sheets.ui.TickHere;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/** One sheet: its drawing and facts, what it gives, where it came from and what became of it. The label's code leads here. */
@Route("sheets/number")
@PermitAll
@StyleSheet("context://sheets.css")
public class SheetView extends Div implements HasUrlParameter<Long>, HasDynamicTitle {

    private final transient SheetRack rack;
    private final transient OrderBoards boards;
    private final transient BoardCuts cuts;
    private final transient SheetFinder finder;
    private final transient LearnedSizes learned;
    private final transient RackSettings settings;
    private final transient Workshop workshop;
    private final transient SheetLabels labels;
    private final transient StockTaking taking;
    private final transient SignedIn who;
    private final transient Formatter figures;
    private final transient RackLabels words;
    private final transient MeasuredOutlines measured;
    private final transient WhatIsLeft left;
    private transient Sheet sheet;
    private String title = "";

    public SheetView(
            SheetRack rack,
            OrderBoards boards,
            BoardCuts cuts,
            SheetFinder finder,
            LearnedSizes learned,
            RackSettings settings,
            Workshop workshop,
            SheetLabels labels,
            StockTaking taking,
            SignedIn who,
            Formatter figures,
            RackLabels words,
            MeasuredOutlines measured,
            WhatIsLeft left) {
        this.left = left;
        this.measured = measured;
        this.rack = rack;
        this.boards = boards;
        this.cuts = cuts;
        this.finder = finder;
        this.learned = learned;
        this.settings = settings;
        this.workshop = workshop;
        this.labels = labels;
        this.taking = taking;
        this.who = who;
        this.figures = figures;
        this.words = words;
        addClassName("pw-page");
    }

    @Override
    public void setParameter(BeforeEvent event, Long number) {
        title = figures.text("sheets.drawing.title", number.toString());
        show(new SheetId(number));
    }

    @Override
    public String getPageTitle() {
        return title;
    }

    private void show(SheetId id) {
        removeAll();
        Optional<Sheet> found = rack.find(id);
        if (found.isEmpty()) {
            Div empty = new Div(
                    new H2(figures.text("sheets.unknown", id.toString())),
                    new Anchor("sheets", figures.text("sheets.title")));
            empty.addClassName("pw-empty");
            add(words.doors("-"), empty);
            return;
        }
        sheet = found.get();
        PageHead head = new PageHead(
                title,
                words.state(sheet.state()),
                new Span(words.shape(sheet)),
                new Span(words.kind(sheet.facts())),
                new Span(words.age(sheet)),
                label());
        Div left = new Div(todo(), family(), photo());
        if (sheet.state() != SheetState.USED) {
            left.addComponentAsFirst(picture());
        }
        left.addClassName("sheets-column");
        Div right = new Div(facts(), history());
        right.addClassName("sheets-column");
        Div columns = new Div(left, right);
        columns.addClassName("sheets-one");
        add(head, words.doors("-"));
        taking.current()
                .ifPresent(walk -> add(new TickHere(sheet.id(), walk, taking, who, figures, () -> show(sheet.id()))));
        measured.unconfirmed(sheet.id()).filter(unsure -> sheet.isFree()).ifPresent(unsure -> add(ruler(unsure)));
        add(columns);
    }

    /** The outline comes from a photo: what that means, and the ruler that ends it. */
    private Component ruler(Length unsure) {
        Button agrees = new Button(figures.text("sheets.photo.confirm"), event -> {
            if (Feedback.unlessRefused(
                    figures, "sheets.photo.confirm.done", () -> measured.confirm(sheet.id(), who.name()))) {
                show(sheet.id());
            }
        });
        Div note = new Div(new Span(figures.text("sheets.photo.unconfirmed", unsure)), agrees);
        note.addClassNames("pw-note", "pw-row");
        return note;
    }

    private Component label() {
        Anchor label = labels(List.of(sheet.id()), "sheets.label.print");
        label.addClassNames("pw-push", "sheets-main-link");
        return label;
    }

    private Anchor labels(List<SheetId> ids, String key) {
        return new SheetLabelsLink(ids, rack, labels, figures.text(key));
    }

    private Component picture() {
        Div section = section("sheets.one.gives");
        SheetDrawing drawing = new SheetDrawing(figures);
        if (sheet.state() == SheetState.RESERVED && sheet.reservation().isPresent()) {
            drawing.show(sheet);
        } else {
            drawing.show(sheet.outline(), title, Remainder.whole(sheet.outline(), learned.sizes()));
        }
        section.add(drawing);
        if (!sheet.facts().past().isFitForCutting()) {
            section.add(new Note(
                    Note.Kind.BAD,
                    figures.text("sheets.whynot.past." + sheet.facts().past().name())));
        } else if (sheet.facts().bow().compareTo(settings.rules().mostBow()) > 0) {
            section.add(new Note(
                    Note.Kind.WARN,
                    figures.text("sheets.one.bowed", sheet.facts().bow())));
        }
        return section;
    }

    private Component todo() {
        return switch (sheet.state()) {
            case RESERVED ->
                new CutForm(sheet, left.of(sheet.id()), boards, cuts, who, figures, () -> show(sheet.id()));
            case FREE ->
                new FreeSheetSection(sheet, finder, settings, workshop, rack, who, figures, () -> show(sheet.id()));
            case USED -> used();
            default -> gone();
        };
    }

    private Component used() {
        Div section = section("sheets.one.used");
        rack.cutOf(sheet.id()).ifPresent(cut -> {
            section.add(new SheetDrawing(figures).show(sheet.outline(), title, cut.blank(), cut.placement(), null));
            if (!who.isMaker()) {
                section.add(new Paragraph(figures.text(
                        "sheets.one.split", cut.cost(), cut.blankCost(), cut.offcutsCost(), cut.scrapped())));
            }
            Button undo = new Button(figures.text("sheets.one.undo"), event -> {
                if (Feedback.unlessRefused(figures, "sheets.one.undone", () -> cuts.undo(cut.id(), who.name()))) {
                    show(sheet.id());
                }
            });
            section.add(undo);
        });
        return section;
    }

    private Component gone() {
        Div section = section("sheets.one.gone");
        if (sheet.state() == SheetState.SCRAPPED) {
            section.add(new Button(figures.text("sheets.one.bringback"), event -> {
                if (Feedback.unlessRefused(
                        figures, "sheets.one.broughtback", () -> rack.bringBack(sheet.id(), who.name()))) {
                    show(sheet.id());
                }
            }));
        }
        return section;
    }

    private Component family() {
        Div section = section("sheets.one.family");
        Optional<SheetId> parent = rack.parent(sheet);
        List<SheetId> children = rack.children(sheet.id());
        section.setVisible(parent.isPresent() || !children.isEmpty());
        parent.ifPresent(
                id -> section.add(new Anchor("sheets/number/" + id, figures.text("sheets.one.parent", id.toString()))));
        if (!children.isEmpty()) {
            Div line = new Div(new Span(figures.text("sheets.one.children") + " "));
            children.forEach(id -> line.add(new Anchor("sheets/number/" + id, id.toString()), new Span(" ")));
            line.addClassName("sheets-children");
            section.add(line, labels(children, "sheets.label.children"));
        }
        return section;
    }

    private Component photo() {
        Div section = section("sheets.photo");
        section.add(new SheetPhoto(sheet, rack, who, figures, () -> show(sheet.id())));
        return section;
    }

    private Component facts() {
        FactsForm form = new FactsForm(figures, settings, rack, workshop);
        return new SheetFactsSection(sheet, form, rack, who, figures, () -> show(sheet.id()));
    }

    private Component history() {
        Div section = section("sheets.history");
        Div lines = new Div();
        lines.addClassName("sheets-history");
        rack.history(sheet.id()).forEach(line -> {
            Span when = new Span(figures.moment(line.at()) + " · " + line.who());
            when.addClassName("pw-small");
            lines.add(new Div(new Span(figures.say(line.what())), when));
        });
        section.add(lines);
        return section;
    }

    private Div section(String key) {
        PageSection section = new PageSection(figures.text(key));
        return section;
    }
}
