package puzzleworkshop.boards.ui;

import com.vaadin.flow.component.UI;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.progressbar.ProgressBar;
import com.vaadin.flow.router.PageTitle;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.boards.BlanksWaiting;
import puzzleworkshop.boards.FollowingBlank;
import puzzleworkshop.boards.OrderBoards;
import puzzleworkshop.boards.WaitingBlank;
import puzzleworkshop.boards.WeekAssignment;
import puzzleworkshop.boards.WeekAssignment.Compared;
import puzzleworkshop.boards.WeekAssignment.Given;
import puzzleworkshop.boards.WeekAssignment.WeekPlan;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.UiPush;
import puzzleworkshop.display.blocks.EmptyState;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.progress.WorkingBar;
import puzzleworkshop.measure.Area;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.ui.RackLabels;
import puzzleworkshop.sheets.ui.SheetDrawing;
import puzzleworkshop.workshop.SignedIn;

/** All orders that wait for a sheet, given theirs together, beside what taking them one by one would cost. */
@Route("sheets/week")
@PageTitle("Sheets for the waiting week")
@PermitAll
@StyleSheet("context://sheets.css")
public class WeekSheetsView extends Div {

    private static final long THINKING = 2_000;

    private final transient WeekAssignment assignment;
    private final transient SheetRack rack;
    private final transient BlanksWaiting blanks;
    private final transient OrderBoards boards;
    private final transient SignedIn who;
    private final transient Formatter figures;
    private final Div answer = new Div();

    public WeekSheetsView(
            WeekAssignment assignment,
            SheetRack rack,
            BlanksWaiting blanks,
            OrderBoards boards,
            SignedIn who,
            Formatter figures,
            RackLabels words) {
        this.assignment = assignment;
        this.rack = rack;
        this.blanks = blanks;
        this.boards = boards;
        this.who = who;
        this.figures = figures;
        addClassName("pw-page");
        PageHead head = new PageHead(figures.text("boards.week.title"));
        answer.addClassName("pw-stack");
        add(head, words.doors("/week"), answer);
        ask();
    }

    private void ask() {
        answer.removeAll();
        List<WaitingBlank> all = assignment.waiting();
        List<FollowingBlank> following = blanks.following();
        List<WaitingBlank> waiting = all.stream()
                .filter(blank -> following.stream().noneMatch(next -> isSame(blank, next)))
                .toList();
        following.forEach(next -> all.stream()
                .filter(blank -> isSame(blank, next))
                .findFirst()
                .ifPresent(blank -> answer.add(follower(blank, next))));
        if (waiting.isEmpty()) {
            EmptyState empty =
                    new EmptyState(figures.text("boards.week.none.title"), figures.text("boards.week.none.text"));
            answer.add(empty);
            return;
        }
        Button start = new Button(figures.text("boards.week.start", waiting.size()));
        start.addThemeVariants(ButtonVariant.PRIMARY);
        start.addClickListener(event -> think(waiting));
        Div list = new Div();
        list.addClassName("sheets-week-list");
        waiting.forEach(blank -> list.add(new Div(
                new Span(blank.order().number()),
                new Span(blank.title()),
                new Span(figures.size(blank.wish().size())),
                new Span(blank.due().map(figures::day).orElse("")))));
        Div section = new Div(new Paragraph(figures.text("boards.week.text")), list, start);
        section.addClassName("pw-section");
        answer.add(section);
    }

    private static boolean isSame(WaitingBlank blank, FollowingBlank next) {
        return blank.order().id().equals(next.order().id()) && blank.position() == next.position();
    }

    /** An order whose blank has its place on what a held sheet will leave. */
    private Div follower(WaitingBlank blank, FollowingBlank next) {
        Anchor sheet = new Anchor(
                "sheets/number/" + next.sheet(),
                figures.text("sheets.drawing.title", next.sheet().toString()));
        Button drop = new Button(figures.text("boards.week.follows.drop"), event -> {
            boards.unfollow(next, who.name());
            ask();
        });
        drop.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        Div line = new Div(
                new Span(figures.text("boards.week.follows", blank.order().number(), blank.title(), next.blank())),
                sheet,
                drop);
        line.addClassName("sheets-line");
        Div section = new Div(line);
        section.addClassName("pw-section");
        return section;
    }

    private void think(List<WaitingBlank> waiting) {
        answer.removeAll();
        ProgressBar bar = new WorkingBar();
        bar.setIndeterminate(true);
        answer.add(new Paragraph(figures.text("boards.week.thinking")), bar);
        UI ui = UI.getCurrent();
        UiPush.beside("boards of the week", () -> {
            try {
                Compared compared = assignment.assign(waiting, THINKING, 1);
                ui.access(() -> show(compared));
            } catch (RuntimeException failed) {
                ui.access(() -> {
                    ask();
                    Feedback.tell(figures.text("boards.week.failed"), true);
                });
                throw failed;
            }
        });
    }

    private void show(Compared compared) {
        answer.removeAll();
        PageSection comparison = new PageSection(
                figures.text("boards.week.comparison"),
                new Paragraph(saves(compared)),
                table(compared),
                bound(compared));
        answer.add(comparison);
        WeekPlan plan = compared.together();
        Div cards = new Div();
        cards.addClassName("sheets-cards");
        plan.given().forEach(given -> cards.add(card(given, plan)));
        answer.add(cards);
        plan.without().forEach(blank -> {
            Note note = new Note(
                    Note.Kind.BAD,
                    figures.text(
                            "boards.week.without",
                            blank.order().number(),
                            blank.wish().size()));
            answer.add(note);
        });
        List<Given> fromRack = firstOnEachSheet(plan);
        if (!fromRack.isEmpty()) {
            Button hold = new Button(
                    figures.text("boards.week.hold", fromRack.size()), event -> hold(fromRack, plan.given()));
            hold.addThemeVariants(ButtonVariant.PRIMARY);
            answer.add(hold);
            if (fromRack.size() < plan.given().size()) {
                answer.add(new Paragraph(figures.text("boards.week.later")));
            }
        }
    }

    /** A sheet is held for one order at a time; the next blank on it waits for the offcut of the first. */
    private static List<Given> firstOnEachSheet(WeekPlan plan) {
        List<Given> first = new ArrayList<>();
        plan.given().stream()
                .filter(given -> given.sheet().isPresent())
                .sorted((a, b) -> b.blank()
                        .wish()
                        .size()
                        .area()
                        .compareTo(a.blank().wish().size().area()))
                .forEach(given -> {
                    if (first.stream().noneMatch(other -> other.sheet().equals(given.sheet()))) {
                        first.add(given);
                    }
                });
        return first;
    }

    private Div table(Compared compared) {
        Div table = new Div();
        table.addClassName("sheets-compared");
        WeekPlan ours = compared.together();
        WeekPlan theirs = compared.firstCome();
        row(table, "", figures.text("boards.week.together"), figures.text("boards.week.firstcome"));
        row(
                table,
                figures.text("boards.week.bought"),
                figures.text("boards.week.boards", ours.bought().size(), ours.newArea()),
                figures.text("boards.week.boards", theirs.bought().size(), theirs.newArea()));
        row(table, figures.text("boards.week.lost"), figures.area(ours.valueLost()), figures.area(theirs.valueLost()));
        row(
                table,
                figures.text("boards.week.missing"),
                String.valueOf(ours.without().size()),
                String.valueOf(theirs.without().size()));
        return table;
    }

    private String saves(Compared compared) {
        Area board = compared.firstCome().newArea().minus(compared.together().newArea());
        Area value = compared.firstCome().valueLost().minus(compared.together().valueLost());
        return board.mm2() >= 1
                ? figures.text("boards.week.saves.board", board)
                : value.mm2() >= 1
                        ? figures.text("boards.week.saves.value", value)
                        : figures.text("boards.week.saves.nothing");
    }

    private Paragraph bound(Compared compared) {
        SmallText bound = new SmallText((compared.leastNewArea().mm2() > 0
                        ? figures.text("boards.week.bound.new", compared.leastNewArea(), compared.leastValueLost())
                        : figures.text("boards.week.bound", compared.leastValueLost()))
                + " " + figures.text("boards.week.bound.how"));
        return bound;
    }

    private static void row(Div table, String... cells) {
        for (String cell : cells) {
            table.add(new Span(cell));
        }
    }

    private Div card(Given given, WeekPlan plan) {
        Span title =
                new Span(given.blank().order().number() + " · " + given.blank().title());
        Div card = new Div();
        card.addClassName("sheets-card");
        Optional<Sheet> sheet = given.sheet().flatMap(rack::find);
        if (sheet.isPresent()) {
            String name = figures.text("sheets.drawing.title", sheet.get().id().toString());
            card.add(
                    new SheetDrawing(figures)
                            .show(
                                    sheet.get().outline(),
                                    name,
                                    given.blank().wish().size(),
                                    given.place(),
                                    null),
                    title,
                    new Anchor("sheets/number/" + sheet.get().id(), name));
            if (!sheet.get().facts().place().isEmpty()) {
                card.add(new Span(figures.text("sheets.at", sheet.get().facts().place())));
            }
            given.why().ifPresent(why -> card.add(new Span(figures.say(why))));
        } else {
            var offer = plan.bought().get(given.newBoard()).offer();
            card.add(
                    new SheetDrawing(figures)
                            .show(
                                    puzzleworkshop.geometry.Outline.rectangle(offer.size()),
                                    offer.name(),
                                    given.blank().wish().size(),
                                    given.place(),
                                    null),
                    title,
                    new Span(
                            who.isMaker()
                                    ? figures.text("boards.week.newboard.no-price", given.newBoard() + 1, offer.name())
                                    : figures.text(
                                            "boards.week.newboard",
                                            given.newBoard() + 1,
                                            offer.name(),
                                            offer.price())));
        }
        return card;
    }

    private void hold(List<Given> first, List<Given> all) {
        int held = 0;
        List<String> refused = new ArrayList<>();
        for (Given one : first) {
            List<Given> next = all.stream()
                    .filter(given -> given != one && given.sheet().equals(one.sheet()))
                    .toList();
            try {
                assignment.hold(one, next, who.name());
                held++;
            } catch (Refused taken) {
                refused.add(figures.say(taken));
            }
        }
        if (refused.isEmpty()) {
            Feedback.tell(figures.text("boards.week.held", held), false);
        } else {
            // one answer for one press: what was held, and why the others were not
            Feedback.tell(figures.text("boards.week.held", held) + ". " + String.join(" ", refused), true);
        }
        ask();
    }
}
