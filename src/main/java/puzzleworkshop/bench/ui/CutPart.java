package puzzleworkshop.bench.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.springframework.beans.factory.ObjectProvider;
import puzzleworkshop.bench.Bench.Waiting;
import puzzleworkshop.cutting.CutJob;
import puzzleworkshop.cutting.CutJobs;
import puzzleworkshop.cutting.CutTime;
import puzzleworkshop.cutting.Machine;
import puzzleworkshop.cutting.Machines;
import puzzleworkshop.cutting.Settings;
import puzzleworkshop.cutting.Workpiece;
import puzzleworkshop.cutting.Workpiece.Film;
import puzzleworkshop.cutting.ui.CutJobPanel;
import puzzleworkshop.display.Figures;
import puzzleworkshop.display.Saved;
import puzzleworkshop.geometry.CurvePath;
import puzzleworkshop.orders.Order;
import puzzleworkshop.pattern.CutPattern;
import puzzleworkshop.pattern.PatternShelf;
import puzzleworkshop.sheets.Past;
import puzzleworkshop.sheets.Sheet;
import puzzleworkshop.supplies.Supplies;
import puzzleworkshop.supplies.SupplyItem;
import puzzleworkshop.supplies.SupplyKind;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Stage;

/** At the laser: the settings for this board and the cutting room's own list of what is looked at before a cut. */
@org.springframework.stereotype.Component
class CutPart implements StagePart {

    private static final List<SupplyKind> ON_THE_BOARD =
            List.of(SupplyKind.STICKER_PAPER, SupplyKind.LAMINATE, SupplyKind.MASKING_TAPE);

    private final CutJobs jobs;
    private final Machines machines;
    private final Settings settings;
    private final Supplies supplies;
    private final PatternShelf patterns;
    private final ObjectProvider<CutJobPanel> panels;
    private final Figures figures;
    private final SignedIn signedIn;

    CutPart(
            CutJobs jobs,
            Machines machines,
            Settings settings,
            Supplies supplies,
            PatternShelf patterns,
            ObjectProvider<CutJobPanel> panels,
            Figures figures,
            SignedIn signedIn) {
        this.jobs = jobs;
        this.machines = machines;
        this.settings = settings;
        this.supplies = supplies;
        this.patterns = patterns;
        this.panels = panels;
        this.figures = figures;
        this.signedIn = signedIn;
    }

    @Override
    public Stage stage() {
        return Stage.CUT;
    }

    @Override
    public Optional<Component> show(Waiting waiting, Runnable again) {
        Order order = waiting.order();
        Optional<CutJob> open = jobs.openFor(order.id().value());
        if (open.isPresent()) {
            CutJobPanel panel = panels.getObject().show(open.get());
            panel.whenEnded(ended -> again.run());
            return Optional.of(panel);
        }
        Optional<Machine> machine = machines.standard();
        if (machine.isEmpty()) {
            Paragraph none = new Paragraph(figures.text("bench.cut.no-machine"));
            none.addClassName("pw-note");
            return Optional.of(none);
        }
        Button prepare = new Button(figures.text("bench.cut.prepare"), e -> Saved.unlessRefused(
                figures, "bench.cut.prepared", () -> {
                    jobs.prepare(wish(waiting, machine.get()), signedIn.name());
                    again.run();
                }));
        prepare.addThemeVariants(ButtonVariant.PRIMARY);
        prepare.addClassName("bench-big");
        return Optional.of(new Div(prepare));
    }

    private CutJob.Wish wish(Waiting waiting, Machine machine) {
        Order order = waiting.order();
        SupplyItem film = worstOnTheBoard().orElse(null);
        Film known = film == null ? Film.UNKNOWN : Film.of(film.facts());
        String name = film == null ? figures.text("bench.cut.film-unknown") : film.name();
        Workpiece workpiece = waiting.boards().stream()
                .map(Sheet::facts)
                .findFirst()
                .map(facts -> Workpiece.of(facts, known, name))
                .orElseGet(() -> new Workpiece(order.board(), Past.CLEAN, known, name));
        return new CutJob.Wish(
                OptionalLong.of(order.id().value()),
                order.number() + " " + order.customer().name(),
                machine.id(),
                workpiece,
                Optional.of(CutTime.estimate(lines(order), settings.forBoard(machine, workpiece.board()))));
    }

    /** What lies on the board while it is cut; one that may not, or is not known, counts for all. */
    private Optional<SupplyItem> worstOnTheBoard() {
        List<SupplyItem> all = ON_THE_BOARD.stream().flatMap(kind -> supplies.usual(kind).stream()).toList();
        return all.stream()
                .filter(item -> Film.of(item.facts()) != Film.SAFE)
                .findFirst()
                .or(() -> all.stream().findFirst());
    }

    private List<CurvePath> lines(Order order) {
        CutPattern pattern = patterns.of(order.puzzle().pattern());
        List<CurvePath> lines = new ArrayList<>(pattern.inner());
        lines.add(pattern.outline());
        return lines;
    }
}
