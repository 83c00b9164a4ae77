package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.details.Details;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H3;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.bench.BlankScale;
import puzzleworkshop.bench.Checklist;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.jobs.Workpiece;
import puzzleworkshop.cutting.jobs.Workpiece.Film;
import puzzleworkshop.cutting.settings.CutSetting;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.settings.Trial.Result;
import puzzleworkshop.cutting.time.CutTime;
import puzzleworkshop.cutting.ui.CutJobPanel;
import puzzleworkshop.cutting.ui.TrialNotes;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.geometry.path.CurvePath;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderCutFiles;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.mesh.PatternCache;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.sheets.SheetRack;
import puzzleworkshop.sheets.board.BoardContamination;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/** At the laser: what is dialled in for this board, the checklist before the cut, the clock and the outcome. */
@org.springframework.stereotype.Component
class CutPart implements StagePart {

    private final Bench bench;
    private final CutJobs jobs;
    private final Machines machines;
    private final Settings settings;
    private final PatternCache patterns;
    private final Supplies supplies;
    private final SheetRack rack;
    private final Workshop workshop;
    private final TrialNotes trials;
    private final ObjectProvider<CutJobPanel> panels;
    private final Formatter figures;
    private final SignedIn signedIn;
    private final BlankScale scale;
    private final OrderCutFiles cutFiles;

    CutPart(
            Bench bench,
            CutJobs jobs,
            Machines machines,
            Settings settings,
            PatternCache patterns,
            Supplies supplies,
            SheetRack rack,
            Workshop workshop,
            TrialNotes trials,
            ObjectProvider<CutJobPanel> panels,
            Formatter figures,
            SignedIn signedIn,
            BlankScale scale,
            OrderCutFiles cutFiles) {
        this.bench = bench;
        this.jobs = jobs;
        this.machines = machines;
        this.settings = settings;
        this.patterns = patterns;
        this.supplies = supplies;
        this.rack = rack;
        this.workshop = workshop;
        this.trials = trials;
        this.panels = panels;
        this.figures = figures;
        this.signedIn = signedIn;
        this.scale = scale;
        this.cutFiles = cutFiles;
    }

    @Override
    public Stage stage() {
        return Stage.CUT;
    }

    @Override
    public Optional<List<Checklist.Line>> checklist(Waiting waiting) {
        return machines.standard().map(machine -> List.of());
    }

    @Override
    public Optional<Component> aboveTheQueue() {
        return trials.all();
    }

    @Override
    public boolean keepsTheClock() {
        return machines.standard().isPresent();
    }

    @Override
    public Tick tick(Waiting waiting) {
        if (machines.standard().isEmpty()) {
            return Tick.NEXT;
        }
        return bench.recordedCut(waiting.order().id())
                // a cut recorded without its time has no result of its own: somebody has said that it was cut
                .map(cut -> cut.result().orElse(Result.THROUGH) == Result.THROUGH ? Tick.NEXT : Tick.ASIDE)
                .orElse(Tick.NOT_YET);
    }

    @Override
    public Optional<Component> show(Waiting waiting, Runnable again) {
        Div part = new Div(new H3(figures.text("bench.cut")));
        part.addClassName("pw-stack");
        Optional<Machine> machine = machines.standard();
        if (machine.isEmpty()) {
            part.add(new Paragraph(figures.text("bench.cut.no-machine")));
            return Optional.of(part);
        }
        part.add(cutFile(waiting.order()));
        Optional<CutJob> last = jobs.lastFor(waiting.order().id());
        last.ifPresent(job -> {
            CutJobPanel panel = panels.getObject().show(job);
            panel.whenStarted(started -> again.run());
            panel.whenEnded(ended -> again.run());
            panel.reckon(parameters ->
                    CutTime.estimate(paths(waiting.order()), job.setting().machine(), parameters));
            part.add(panel);
        });
        boolean open = last.filter(job -> job.ended().isEmpty()).isPresent();
        // what stops it may have been cleared up since: it is laid out anew with what is known now
        boolean stopped =
                last.filter(job -> job.state() == CutJob.State.FORBIDDEN).isPresent();
        if (!open || stopped) {
            String key = stopped ? "look-again" : last.isPresent() ? "another" : "prepare";
            Button prepare = new Button(
                    figures.text("bench.cut." + key),
                    event ->
                            Feedback.unlessRefused(figures, stopped ? "bench.cut.looked" : "bench.cut.prepared", () -> {
                                jobs.prepare(wish(waiting, machine.get()), signedIn.name());
                                again.run();
                            }));
            boolean next = tick(waiting) != Tick.NEXT;
            prepare.addThemeVariants(next ? ButtonVariant.PRIMARY : ButtonVariant.TERTIARY);
            prepare.setClassName("bench-big", next);
            part.add(prepare);
        }
        if (last.filter(job -> job.ended().isPresent()).isEmpty()) {
            Details weigh = new Details(
                    figures.text("bench.count.weigh"),
                    new WeighBlank(waiting.order(), scale, figures, signedIn.name(), again));
            // of a block of several puzzles there is no blank of one to be weighed
            weigh.setVisible(scale.blankOf(waiting.order()).isPresent());
            part.add(weigh);
        }
        return Optional.of(part);
    }

    /** What the machine is fed with, where it is needed. */
    private Div cutFile(Order order) {
        Span name = new Span(figures.text("bench.cut.file"));
        name.addClassName("pw-soft");
        Div files = new Div(name, cutFiles.of(order));
        files.addClassName("pw-apart");
        return files;
    }

    private CutJob.Wish wish(Waiting waiting, Machine machine) {
        Order order = waiting.order();
        SupplyItem worst = films(order).stream()
                .max(Comparator.comparing(item -> Film.of(item.facts()) != Film.SAFE))
                .orElse(null);
        Film film = worst == null ? Film.UNKNOWN : Film.of(worst.facts());
        String filmName = worst == null ? figures.text("bench.cut.film.unknown") : worst.name();
        Workpiece workpiece = boards(waiting).stream()
                .min(Comparator.comparing((Sheet sheet) -> sheet.facts().past().isFitForCutting()))
                .map(sheet -> Workpiece.of(sheet.facts(), film, filmName))
                .orElseGet(() -> new Workpiece(order.board(), BoardContamination.UNKNOWN, film, filmName));
        CutSetting setting = settings.forBoard(machine, workpiece.board());
        return new CutJob.Wish(
                Optional.of(order.id()),
                order.number(),
                machine.id(),
                workpiece,
                Optional.of(CutTime.estimate(paths(order), setting)));
    }

    /** The boards held for it; where it is finished on the board that was cut already, that one. */
    private List<Sheet> boards(Waiting waiting) {
        return waiting.boards().isEmpty()
                ? rack.cutsOf(waiting.order().id()).stream()
                        .filter(cut -> !cut.undone())
                        .flatMap(cut -> rack.find(cut.sheet()).stream())
                        .toList()
                : waiting.boards();
    }

    /** What lies on the board under the laser: what was booked for the order, else what is usually used. */
    private List<SupplyItem> films(Order order) {
        List<SupplyItem> films = new ArrayList<>();
        supplies.usedFor(order.id()).stream()
                .flatMap(movement -> supplies.find(movement.item()).stream())
                .filter(item -> item.kind().isUnderLaser())
                .forEach(films::add);
        for (SupplyKind kind : SupplyKind.values()) {
            if (kind.isUnderLaser() && films.stream().noneMatch(item -> item.kind() == kind)) {
                supplies.usual(kind).ifPresent(films::add);
            }
        }
        return films;
    }

    /** All puzzles of the order: one record is kept for the whole cut, and the machine's ratio is learned from it. */
    private List<CurvePath> paths(Order order) {
        CutPattern pattern = patterns.of(order.puzzle().pattern());
        List<CurvePath> one =
                order.puzzle().cutPaths(pattern, workshop.tradeNumbers().outlineLast());
        return Collections.nCopies(order.quantity(), one).stream()
                .flatMap(List::stream)
                .toList();
    }
}
