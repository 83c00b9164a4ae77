package puzzleworkshop.printing.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Span;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.function.Supplier;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.printing.GangRuns;
import puzzleworkshop.printing.PrintRoom;
import puzzleworkshop.printing.PrintRun;
import puzzleworkshop.printing.RunItem;
import puzzleworkshop.printing.RunState;
import puzzleworkshop.printing.pdf.RunPrinter;
import puzzleworkshop.workshop.SignedIn;

/** One open run: its sheets, how good the layout is, what can be done with it. */
class RunPanel extends Div {

    private final transient GangRuns runs;
    private final transient PrintRoom room;
    private final transient RunPrinter printer;
    private final transient Formatter figures;
    private final transient SignedIn signedIn;
    private final transient Runnable changed;
    private final SheetBoard board;
    private final Div words = new Div();
    private final ChosenPrint chosenPrint;
    private final Div actions = new Div();
    private OptionalLong chosen = OptionalLong.empty();
    private transient PrintRun run;

    RunPanel(
            GangRuns runs, PrintRoom room, RunPrinter printer, Formatter figures, SignedIn signedIn, Runnable changed) {
        this.runs = runs;
        this.room = room;
        this.printer = printer;
        this.figures = figures;
        this.signedIn = signedIn;
        this.changed = changed;
        addClassName("pw-section");
        board = new SheetBoard(figures, new SheetBoard.Hands() {
            @Override
            public void choose(long item) {
                chosen = OptionalLong.of(item);
                show(run);
            }

            @Override
            public void move(long item, int sheet, Length x, Length y) {
                chosen = OptionalLong.of(item);
                boolean turned = of(item) != null && of(item).turned();
                change(() -> runs.move(run.id(), item, sheet, x, y, turned, signedIn.name()));
            }
        });
        chosenPrint = new ChosenPrint(figures, new ChosenPrint.Wishes() {
            @Override
            public void move(RunItem item, int sheet, Length x, Length y, boolean turned) {
                change(() -> runs.move(run.id(), item.id(), sheet, x, y, turned, signedIn.name()));
            }

            @Override
            public void pin(RunItem item, boolean pinned) {
                change(() -> runs.pin(run.id(), item.id(), pinned, signedIn.name()));
            }

            @Override
            public void drop(RunItem item) {
                chosen = OptionalLong.empty();
                if (Feedback.unlessRefused(
                        figures,
                        Sentence.of("printing.dropped", item.order().number()),
                        () -> run = runs.drop(run.id(), item.id(), signedIn.name()))) {
                    changed.run();
                }
            }
        });
        actions.addClassName("printing-actions");
        words.addClassName("printing-bound");
        add(words, board, chosenPrint, actions);
    }

    void show(PrintRun now) {
        boolean sameState = run != null && run.state() == now.state() && run.version() == now.version();
        run = now;
        if (of(chosen.orElse(-1)) == null) {
            chosen = OptionalLong.empty();
        }
        words();
        board.show(run, chosen);
        chosenPrint.setVisible(
                run.state() == RunState.PROPOSED && !run.planned().isEmpty());
        chosenPrint.show(run, chosen.isPresent() ? of(chosen.getAsLong()) : null);
        if (!sameState) {
            actions();
        }
    }

    private RunItem of(long item) {
        return run == null
                ? null
                : run.planned().stream().filter(i -> i.id() == item).findFirst().orElse(null);
    }

    private void words() {
        words.removeAll();
        H2 title = new H2(
                getTranslation("printing.run", run.id()) + " · " + run.medium().name());
        Verdict state = new Verdict(
                run.state() == RunState.CONFIRMED ? Verdict.Kind.GOOD : Verdict.Kind.WAIT,
                getTranslation(run.state().textKey()));
        Span bound = new Span(figures.say(run.bound()));
        Percent used = Percent.ofFraction(BigDecimal.valueOf(run.used()));
        Span share = new Span(figures.text("printing.used", used));
        share.addClassName("pw-small");
        words.add(title, state, bound, share);
        withoutCrosses().ifPresent(why -> words.add(new Verdict(Verdict.Kind.WARN, why)));
        heldBack(runs, run, figures).forEach(why -> words.add(new Verdict(Verdict.Kind.WARN, why)));
    }

    /** Prints whose overhang is too small for the crosses of the run: their place cannot be measured at the laser. */
    private Optional<String> withoutCrosses() {
        return run.crosses().flatMap(wanted -> {
            List<RunItem> without = run.planned().stream()
                    .filter(item -> !wanted.fit(item.overhang()))
                    .toList();
            return without.isEmpty()
                    ? Optional.empty()
                    : Optional.of(figures.text(
                            "printing.crosses.left-out",
                            without.size(),
                            without.getFirst().overhang(),
                            wanted.leastOverhang()));
        });
    }

    /** One sentence for each order of the run that had better wait. */
    static List<String> heldBack(GangRuns runs, PrintRun run, Formatter figures) {
        Map<OrderId, Sentence> held = runs.heldBack();
        return run.planned().stream()
                .filter(item -> held.containsKey(item.order().id()))
                .map(item -> figures.text(
                        "printing.held-in-run",
                        item.order().number(),
                        figures.say(held.get(item.order().id()))))
                .distinct()
                .toList();
    }

    private void actions() {
        actions.removeAll();
        if (run.state() == RunState.PROPOSED) {
            Button confirm = button("printing.confirm", () -> change(() -> room.confirm(run.id(), signedIn.name())));
            confirm.addThemeVariants(ButtonVariant.PRIMARY);
            confirm.setEnabled(!run.planned().isEmpty());
            actions.add(
                    confirm,
                    pdf(),
                    button("printing.anew", () -> change(() -> runs.layOutAnew(run.id(), signedIn.name()))));
        } else {
            Button printed = button("printing.printed", this::printed);
            printed.addThemeVariants(ButtonVariant.PRIMARY);
            actions.add(
                    printed,
                    pdf(),
                    button("printing.reopen", () -> change(() -> room.reopen(run.id(), signedIn.name()))));
        }
        Button spoiled =
                button("printing.spoiled-sheets", () -> new SpoiledSheetsDialog(room, run, figures, signedIn).open());
        spoiled.addThemeVariants(ButtonVariant.TERTIARY);
        Button discard = button("printing.discard", this::discard);
        discard.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.ERROR);
        actions.add(spoiled, discard);
    }

    private Component pdf() {
        return new PdfButton(printer, run.id(), figures);
    }

    private void printed() {
        new PrintedDialog(room, run, heldBack(runs, run, figures), figures, signedIn, changed).open();
    }

    private void discard() {
        if (Feedback.unlessRefused(
                figures, Sentence.of("printing.discarded", run.id()), () -> room.discard(run.id(), signedIn.name()))) {
            changed.run();
        }
    }

    private Button button(String key, Runnable work) {
        return new Button(getTranslation(key), event -> work.run());
    }

    private void change(Supplier<PrintRun> work) {
        try {
            show(work.get());
        } catch (Refused refused) {
            Feedback.tell(figures.say(refused), true);
            show(runs.get(run.id()));
        }
        changed.run();
    }
}
