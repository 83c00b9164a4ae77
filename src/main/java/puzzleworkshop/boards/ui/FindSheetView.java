package puzzleworkshop.boards.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.router.PageTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.boards.BlanksWaiting;
import puzzleworkshop.boards.OrderBoards;
import puzzleworkshop.boards.WaitingBlank;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.EmptyState;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.geometry.Placement;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.SheetId;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.sheets.find.Suggestion;
import puzzleworkshop.sheets.ui.BlankForm;
import puzzleworkshop.sheets.ui.MovableBlank;
import puzzleworkshop.sheets.ui.RackLabels;
import puzzleworkshop.sheets.ui.SheetDrawing;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/** Finds a sheet for a size: the best one large, with the blank to move about, the runners-up beside it. */
@Route("sheets/find")
@PageTitle("Find a sheet")
@PermitAll
@StyleSheet("context://sheets.css")
public class FindSheetView extends Div {

    private final transient SheetFinder finder;
    private final transient Formatter figures;
    private final transient RackLabels words;
    private final transient SignedIn who;
    private final transient BlanksWaiting blanks;
    private final transient OrderBoards boards;
    private final BlankForm form;
    private final Select<WaitingBlank> order = new Select<>();
    private final Div answer = new Div();
    private transient BlankWish wish;

    public FindSheetView(
            SheetFinder finder,
            RackSettings settings,
            Workshop workshop,
            SignedIn who,
            Formatter figures,
            RackLabels words,
            BlanksWaiting blanks,
            OrderBoards boards) {
        this.finder = finder;
        this.figures = figures;
        this.words = words;
        this.who = who;
        this.blanks = blanks;
        this.boards = boards;
        this.form = new BlankForm(figures, settings, workshop, this::search);
        addClassName("pw-page");
        PageHead head = new PageHead(figures.text("boards.find.title"));
        Div asked = new Div(form);
        asked.addClassName("pw-section");
        waiting(asked);
        answer.addClassName("sheets-answer");
        add(head, words.doors("/find"), asked, answer);
        search();
    }

    private void waiting(Div asked) {
        List<WaitingBlank> waiting = blanks.waiting();
        if (!waiting.isEmpty()) {
            order.setLabel(figures.text("boards.find.order"));
            order.setItems(waiting);
            order.setEmptySelectionAllowed(true);
            order.setEmptySelectionCaption(figures.text("boards.find.noorder"));
            order.setItemLabelGenerator(w ->
                    w == null ? figures.text("boards.find.noorder") : w.order().number() + " · " + w.title());
            order.addValueChangeListener(event -> {
                if (event.getValue() != null) {
                    form.show(event.getValue().wish());
                }
                search();
            });
            asked.addComponentAsFirst(order);
        }
    }

    private void search() {
        answer.removeAll();
        Optional<BlankWish> asked = form.wish();
        if (asked.isEmpty()) {
            answer.add(empty("boards.find.ask.title", "boards.find.ask.text"));
            return;
        }
        wish = asked.get();
        List<Suggestion> found = finder.suggest(wish);
        if (found.isEmpty()) {
            nothing();
            return;
        }
        Div best = new Div();
        best.addClassNames("pw-section", "sheets-best");
        show(best, found.getFirst());
        Div others = new Div();
        others.addClassName("sheets-others");
        if (found.size() > 1) {
            others.add(new H2(figures.text("boards.find.others")));
            found.subList(1, found.size()).forEach(other -> others.add(runnerUp(best, other)));
        }
        others.add(whyNot());
        answer.add(best, others);
    }

    private void show(Div best, Suggestion suggestion) {
        best.removeAll();
        Span number = new Span(suggestion.sheet().id().toString());
        number.addClassName("sheets-number");
        Anchor page = new Anchor("sheets/number/" + suggestion.sheet().id(), figures.text("boards.find.open"));
        H2 title = new H2(number, new Span(words.kind(suggestion.sheet().facts())));
        Paragraph reason = new Paragraph(figures.say(suggestion.reason()));
        SheetDrawing after = new SheetDrawing(figures).show(suggestion);
        Div facts = facts(suggestion);
        Div hold = new Div();
        hold(hold, suggestion.sheet().id(), suggestion.placement());
        MovableBlank movable = new MovableBlank(
                figures,
                suggestion.sheet().outline(),
                figures.text("boards.find.move"),
                wish.size(),
                suggestion.placement(),
                place -> moved(suggestion, place, after, reason, facts, hold));
        Div drawings = new Div(
                new Div(new Span(figures.text("boards.find.place")), movable),
                new Div(new Span(figures.text("boards.find.remains")), after));
        drawings.addClassName("sheets-pair");
        best.add(title, reason, drawings, facts, hold, page);
    }

    private void moved(
            Suggestion first, Optional<Placement> place, SheetDrawing after, Paragraph reason, Div facts, Div hold) {
        Optional<Suggestion> now = place.flatMap(at -> finder.at(first.sheet().id(), wish, at));
        if (now.isPresent()) {
            after.show(now.get());
            reason.setText(figures.say(now.get().reason()));
            facts.removeAll();
            facts.add(facts(now.get()));
            hold(hold, first.sheet().id(), now.get().placement());
        } else {
            reason.setText(figures.text("sheets.move.outside"));
            after.show(first.sheet().outline(), figures.text("boards.find.remains"), null);
            facts.removeAll();
            hold.removeAll();
        }
    }

    private Div facts(Suggestion suggestion) {
        String place = suggestion.sheet().facts().place();
        Span text = new Span(
                who.isMaker()
                        ? figures.text("boards.find.facts.no-cost", wish.size(), suggestion.valueLost())
                        : figures.text(
                                "boards.find.facts", wish.size(), suggestion.blankCost(), suggestion.valueLost()));
        Div facts = new Div(text);
        if (!place.isEmpty()) {
            facts.add(new Span(" · " + figures.text("sheets.at", place)));
        }
        facts.addClassName("pw-soft");
        return facts;
    }

    private void hold(Div hold, SheetId sheet, Placement place) {
        hold.removeAll();
        WaitingBlank chosen = order.getValue();
        if (chosen != null && sameBlank(chosen.wish().size(), wish.size())) {
            Button button =
                    new Button(figures.text("boards.find.hold", chosen.order().number()), event -> {
                        boolean done = Feedback.unlessRefused(
                                figures,
                                "boards.find.held",
                                () -> boards.holdWithFollowers(
                                        new OrderBoards.Place(chosen.order().id(), chosen.position(), sheet, place),
                                        List.of(),
                                        who.name()));
                        if (done) {
                            order.setItems(blanks.waiting());
                        }
                        search();
                    });
            button.addThemeVariants(ButtonVariant.PRIMARY);
            hold.add(button);
        }
    }

    /** The size may be changed by hand after an order was chosen; then it is no longer its blank. */
    private static boolean sameBlank(Size one, Size other) {
        return Math.abs(one.width().mm() - other.width().mm()) < 0.01
                && Math.abs(one.height().mm() - other.height().mm()) < 0.01;
    }

    private Component runnerUp(Div best, Suggestion other) {
        Span number = new Span(other.sheet().id().toString());
        number.addClassName("sheets-number");
        Span reason = new Span(figures.say(other.reason()));
        reason.addClassName("pw-small");
        Button take = new Button(figures.text("boards.find.look"), event -> {
            show(best, other);
            best.scrollIntoView();
        });
        take.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        take.setAriaLabel(
                figures.text("boards.find.looknumber", other.sheet().id().toString()));
        Div text = new Div(new Div(number, new Span(words.shape(other.sheet()))), reason, take);
        text.addClassName("pw-stack");
        Div card = new Div(new SheetDrawing(figures).show(other), text);
        card.addClassName("sheets-runner-up");
        return card;
    }

    private void nothing() {
        Div none = new Div(new H2(figures.text("boards.find.none.title")));
        none.addClassNames("pw-section", "sheets-best");
        finder.newSheetFor(wish)
                .ifPresentOrElse(
                        offer -> none.add(
                                new Paragraph(figures.say(offer.reason())),
                                new SheetDrawing(figures).show(offer, wish.size())),
                        () -> none.add(
                                new Paragraph(figures.text("boards.find.none.text")),
                                new Anchor("sheets/rules", figures.text("boards.find.none.offers"))));
        Div others = new Div(whyNot());
        others.addClassName("sheets-others");
        answer.add(none, others);
    }

    private Component whyNot() {
        IntegerField number = new IntegerField(figures.text("boards.find.whynot"));
        Paragraph why = new Paragraph();
        why.getElement().setAttribute("aria-live", "polite");
        number.addValueChangeListener(event -> {
            if (event.getValue() == null) {
                why.setText("");
                return;
            }
            try {
                why.setText(figures.say(finder.whyNot(new SheetId(event.getValue()), wish)));
            } catch (Refused refused) {
                why.setText(figures.say(refused));
            }
        });
        Div ask = new Div(number, why);
        ask.addClassNames("pw-stack", "sheets-whynot");
        return ask;
    }

    private Div empty(String title, String text) {
        EmptyState empty = new EmptyState(figures.text(title), figures.text(text));
        return empty;
    }
}
