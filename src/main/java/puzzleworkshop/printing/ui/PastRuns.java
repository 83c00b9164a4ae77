package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.details.Details;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.ListItem;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.html.UnorderedList;
import java.util.List;
import java.util.stream.Collectors;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.printing.GangRuns;
import puzzleworkshop.printing.PrintRoom;
import puzzleworkshop.printing.PrintRun;
import puzzleworkshop.printing.RunItem;
import puzzleworkshop.printing.RunLine;
import puzzleworkshop.workshop.SignedIn;

/** Printed runs, newest first, each with what happened to it; from here a print that turned out to be no good is sent to wait again. */
class PastRuns extends Div {

    private static final int AT_ONCE = 8;

    private final transient GangRuns runs;
    private final transient PrintRoom room;
    private final transient Formatter figures;
    private final transient SignedIn signedIn;
    private final transient Runnable changed;
    private int shown = AT_ONCE;

    PastRuns(GangRuns runs, PrintRoom room, Formatter figures, SignedIn signedIn, Runnable changed) {
        this.runs = runs;
        this.room = room;
        this.figures = figures;
        this.signedIn = signedIn;
        this.changed = changed;
        addClassName("pw-section");
    }

    void refresh() {
        removeAll();
        add(new H2(getTranslation("printing.past")));
        List<PrintRun> past = runs.past(0, shown);
        if (past.isEmpty()) {
            Paragraph none = new Paragraph(getTranslation("printing.past-none"));
            none.addClassName("pw-soft");
            add(none);
        }
        Div rows = new Div();
        past.forEach(run -> rows.add(row(run)));
        add(rows);
        if (runs.countPast() > shown) {
            Button more = new Button(getTranslation("printing.past-more"), event -> {
                shown += AT_ONCE;
                refresh();
            });
            more.addThemeVariants(ButtonVariant.TERTIARY);
            add(more);
        }
    }

    private Component row(PrintRun run) {
        List<RunLine> history = runs.history(run.id());
        Span name = new Span(
                getTranslation("printing.run", run.id()) + " · " + run.medium().name());
        name.addClassName("printing-past-name");
        Span when = small(run.printedAt()
                .map(at -> figures.text("printing.past-by", figures.moment(at), by(history)))
                .orElse(""));
        int prints = run.laid().size();
        Span what = small(
                run.isRoll()
                        ? figures.text("printing.past-what-roll", run.length(), prints)
                        : figures.text("printing.past-what", run.sheets(), prints));
        Verdict verdict = run.spoiled() == 0
                ? new Verdict(Verdict.Kind.GOOD, getTranslation("printing.past-good"))
                : new Verdict(Verdict.Kind.WARN, figures.text("printing.past-spoiled", run.spoiled()));
        Button spoiled = new Button(
                getTranslation("printing.spoil"),
                event -> new SpoiledPrintDialog(room, run, figures, signedIn, changed).open());
        spoiled.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        spoiled.setVisible(run.laid().stream().anyMatch(item -> item.outcome() == RunItem.Outcome.PRINTED));
        Div head = new Div(name, when, what, verdict, spoiled);
        head.addClassName("printing-past-row");
        return new Div(head, more(run, history));
    }

    private Component more(PrintRun run, List<RunLine> history) {
        UnorderedList lines = new UnorderedList();
        lines.addClassName("printing-past-lines");
        lines.add(new ListItem(small(getTranslation("printing.past-prints") + ": "
                + run.laid().stream().map(this::words).collect(Collectors.joining(" · ")))));
        history.forEach(line -> lines.add(
                new ListItem(small(figures.moment(line.at())), new Span(figures.say(line.what())), small(line.who()))));
        Details details = new Details(getTranslation("printing.past-history"), lines);
        details.addClassName("printing-past-more");
        return details;
    }

    private static String by(List<RunLine> history) {
        return history.stream()
                .filter(line -> line.what().key().equals("printing.history.printed"))
                .map(RunLine::who)
                .findFirst()
                .orElse("");
    }

    private static Span small(String text) {
        Span span = new Span(text);
        span.addClassName("pw-small");
        return span;
    }

    private String words(RunItem item) {
        return item.outcome() == RunItem.Outcome.PRINTED
                ? item.order().number()
                : item.order().number() + " (" + getTranslation(item.outcome().textKey()) + ")";
    }
}
