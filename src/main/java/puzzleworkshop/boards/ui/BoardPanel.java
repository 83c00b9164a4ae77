package puzzleworkshop.boards.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.combobox.ComboBox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.TextField;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.boards.BlankPlan;
import puzzleworkshop.boards.BlankPlanner;
import puzzleworkshop.boards.BlanksWaiting;
import puzzleworkshop.boards.Chosen;
import puzzleworkshop.boards.OrderBoards;
import puzzleworkshop.cutting.ui.TrialNotes;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.LatestAnswer;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.ui.OrderPanel;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardOffer;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.sheets.find.Suggestion;
import puzzleworkshop.sheets.ui.SheetDrawing;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Stage;

/** The boards of an order on its page: held, chosen, or still to be bought; another can be chosen until it is cut. */
@org.springframework.stereotype.Component
class BoardPanel implements OrderPanel {

    private final OrderBoards boards;
    private final BlanksWaiting waiting;
    private final SheetRack rack;
    private final SheetFinder finder;
    private final RackSettings settings;
    private final Machines machines;
    private final TrialNotes trials;
    private final Formatter figures;
    private final SignedIn signedIn;

    BoardPanel(
            OrderBoards boards,
            BlanksWaiting waiting,
            SheetRack rack,
            SheetFinder finder,
            RackSettings settings,
            Machines machines,
            TrialNotes trials,
            Formatter figures,
            SignedIn signedIn) {
        this.boards = boards;
        this.waiting = waiting;
        this.rack = rack;
        this.finder = finder;
        this.settings = settings;
        this.machines = machines;
        this.trials = trials;
        this.figures = figures;
        this.signedIn = signedIn;
    }

    @Override
    public int place() {
        return 40;
    }

    @Override
    public Optional<Component> show(Order order, Runnable changed) {
        List<Chosen> chosen = waiting.of(order.id());
        if (chosen.isEmpty()) {
            return Optional.empty();
        }
        PageSection section = new PageSection(figures.text("offers.new.board"));
        chosen.forEach(block -> section.add(card(order, block, changed)));
        trials.of(order.id()).ifPresent(section::add);
        return Optional.of(section);
    }

    private Component card(Order order, Chosen block, Runnable changed) {
        Div words = new Div();
        words.addClassName("pw-stack");
        Optional<Sheet> sheet = block.sheet().flatMap(rack::find);
        Div card = new Div(drawing(block, sheet), words);
        card.addClassName("neworder-board");
        boolean cut =
                sheet.map(one -> !one.isFree() && one.reservation().isEmpty()).orElse(false);
        boolean again =
                cut && order.next().map(next -> next.compareTo(Stage.CUT) <= 0).orElse(false);
        words.add(
                new Span(title(block, sheet)),
                again ? new Verdict(Verdict.Kind.WARN, figures.text("boards.panel.again")) : state(block, sheet));
        if (block.count() > 1 || block.part() == BlankPlan.Part.TRAY) {
            Paragraph several =
                    new Paragraph(figures.text(block.part().textKey(), block.count(), block.across(), block.down()));
            several.addClassName("pw-small");
            words.add(several);
        }
        boolean live = order.state() == OrderState.QUOTE || order.state() == OrderState.CONFIRMED;
        if (live && (!cut || again)) {
            words.add(another(order, block, changed));
            if (block.mustBeBought() && order.state() == OrderState.CONFIRMED) {
                words.add(arrival(order, block, changed));
            }
        }
        return card;
    }

    private SheetDrawing drawing(Chosen block, Optional<Sheet> sheet) {
        SheetDrawing drawing = new SheetDrawing(figures);
        Outline outline = sheet.map(Sheet::outline)
                .or(() -> offer(block).map(offer -> Outline.rectangle(offer.size())))
                .orElseGet(() -> Outline.rectangle(block.size()));
        return drawing.show(outline, title(block, sheet), block.size(), block.placement(), null);
    }

    private Optional<BoardOffer> offer(Chosen block) {
        return block.offer()
                .flatMap(id -> settings.offers().stream()
                        .filter(offer -> offer.id() == id)
                        .findFirst());
    }

    private String title(Chosen block, Optional<Sheet> sheet) {
        return sheet.map(s -> s.facts().place().isBlank()
                        ? figures.text("orders.sheet", String.valueOf(s.id().value()))
                        : figures.text(
                                "orders.sheet-at",
                                String.valueOf(s.id().value()),
                                s.facts().place()))
                .or(() -> offer(block).map(BoardOffer::name))
                .orElse("");
    }

    private Component state(Chosen block, Optional<Sheet> sheet) {
        if (block.mustBeBought()) {
            return new Verdict(Verdict.Kind.WARN, figures.text("boards.panel.to-buy"));
        }
        if (block.held()) {
            return new Verdict(Verdict.Kind.GOOD, figures.text("boards.panel.held"));
        }
        boolean free = sheet.map(Sheet::isFree).orElse(false);
        return free
                ? new Verdict(Verdict.Kind.WAIT, figures.text("boards.panel.chosen"))
                : new Verdict(Verdict.Kind.GOOD, figures.text("boards.panel.used"));
    }

    /** The other sheets are searched for only when somebody asks, and beside the screen: the whole rack is gone through. */
    private Component another(Order order, Chosen block, Runnable changed) {
        Div place = new Div();
        Button ask = new Button(figures.text("boards.panel.another"));
        ask.setDisableOnClick(true);
        place.add(ask);
        Length mostBow = machines.standard().map(Machine::bowLimit).orElse(Machine.DEFAULT_BOW_LIMIT);
        LatestAnswer<List<Suggestion>> others = new LatestAnswer<>(Duration.ZERO);
        ask.addClickListener(press -> others.ask(
                outdated -> finder.suggest(BlankPlanner.wish(block.size(), order.board(), mostBow)),
                found -> {
                    place.removeAll();
                    ComboBox<Suggestion> choice = choice(order, block, found, changed);
                    place.add(choice);
                    choice.focus();
                },
                fault -> {
                    ask.setEnabled(true);
                    throw fault;
                }));
        return place;
    }

    private ComboBox<Suggestion> choice(Order order, Chosen block, List<Suggestion> others, Runnable changed) {
        ComboBox<Suggestion> choice = new ComboBox<>(figures.text("boards.panel.another"));
        choice.setItems(others);
        choice.setItemLabelGenerator(s -> figures.text(
                        "orders.sheet-at",
                        String.valueOf(s.sheet().id().value()),
                        s.sheet().facts().place())
                + ": " + figures.say(s.reason()));
        choice.setEnabled(!others.isEmpty());
        choice.setHelperText(others.isEmpty() ? figures.text("boards.panel.no-other") : "");
        choice.setWidthFull();
        choice.addValueChangeListener(event -> {
            if (event.getValue() != null) {
                Feedback.unlessRefused(
                        figures,
                        "boards.panel.changed",
                        () -> boards.choose(order.id(), block.position(), event.getValue(), signedIn.name()));
                changed.run();
            }
        });
        return choice;
    }

    private Component arrival(Order order, Chosen block, Runnable changed) {
        TextField place = new TextField(figures.text("boards.panel.place"));
        Button arrived = new Button(figures.text("boards.panel.arrived"), event -> {
            Feedback.unlessRefused(
                    figures,
                    "boards.panel.held",
                    () -> boards.arrive(
                            order.id(), block.position(), place.getValue().strip(), signedIn.name()));
            changed.run();
        });
        arrived.addThemeVariants(ButtonVariant.PRIMARY);
        Div row = new Div(place, arrived);
        row.addClassName("pw-row");
        return row;
    }
}
