package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import java.util.List;
import java.util.stream.Collectors;
import puzzleworkshop.display.Figures;
import puzzleworkshop.printing.GangRuns;
import puzzleworkshop.printing.PrintRun;
import puzzleworkshop.printing.RunItem;
import puzzleworkshop.workshop.SignedIn;

/** Printed runs, newest first; from here a print that turned out to be no good is sent to wait again. */
class PastRuns extends Div {

    private static final int AT_ONCE = 8;

    private final transient GangRuns runs;
    private final transient Figures figures;
    private final transient SignedIn signedIn;
    private final transient Runnable changed;
    private int shown = AT_ONCE;

    PastRuns(GangRuns runs, Figures figures, SignedIn signedIn, Runnable changed) {
        this.runs = runs;
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
        Span name = new Span(getTranslation("printing.run", run.id()) + " · " + run.medium().name());
        Span when = new Span(run.printedAt().map(figures::moment).orElse(""));
        when.addClassName("pw-small");
        Span what = new Span(run.laid().stream().map(this::words).collect(Collectors.joining(" · ")));
        what.addClassNames("pw-small", "pw-grow");
        Button spoiled = new Button(getTranslation("printing.spoil"),
                event -> new SpoiledPrintDialog(runs, run, figures, signedIn, changed).open());
        spoiled.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        spoiled.setVisible(run.laid().stream().anyMatch(item -> item.outcome() == RunItem.Outcome.PRINTED));
        Div row = new Div(name, when, what, spoiled);
        row.addClassName("printing-past-row");
        return row;
    }

    private String words(RunItem item) {
        return item.outcome() == RunItem.Outcome.PRINTED ? item.orderNumber()
                : item.orderNumber() + " (" + getTranslation(item.outcome().textKey()) + ")";
    }
}
