package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.BeforeEvent;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.HasUrlParameter;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.geometry.align.LearnedReading;
import puzzleworkshop.geometry.align.NeededOverhang;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.placing.LearnedOverhang;
import puzzleworkshop.placing.Position;
import puzzleworkshop.placing.Positions;
import puzzleworkshop.placing.ProposedOverhang;
import puzzleworkshop.printing.crosses.Crosses;
import puzzleworkshop.printing.crosses.PrintedCrosses;
import puzzleworkshop.workshop.SignedIn;
import puzzleworkshop.workshop.Workshop;

/** One machine's marks and jig: how marks are read, what the measured places have taught, and the fence for its bed. */
@Route("machines/places")
@PermitAll
@StyleSheet("context://placing.css")
public class PlacesView extends Div implements HasUrlParameter<Long>, HasDynamicTitle {

    private final transient Machines machines;
    private final transient Positions positions;
    private final transient PrintedCrosses crosses;
    private final transient Workshop workshop;
    private final transient SignedIn who;
    private final transient Formatter figures;

    public PlacesView(
            Machines machines,
            Positions positions,
            PrintedCrosses crosses,
            Workshop workshop,
            SignedIn who,
            Formatter figures) {
        this.machines = machines;
        this.positions = positions;
        this.crosses = crosses;
        this.workshop = workshop;
        this.who = who;
        this.figures = figures;
        addClassName("pw-page");
    }

    @Override
    public void setParameter(BeforeEvent event, Long id) {
        removeAll();
        add(new Anchor("machines", figures.text("placing.back")));
        Optional<Machine> machine = machines.find(id);
        if (machine.isEmpty()) {
            add(new Paragraph(figures.text("cutting.machine.gone")));
            return;
        }
        PageHead head = new PageHead(
                figures.text("placing.places", machine.get().name()),
                new Paragraph(figures.text("placing.places.lead")));
        add(
                head,
                learned(machine.get()),
                new JigSection(machine.get(), workshop, figures),
                new FenceSection(machine.get(), positions, who.name(), figures),
                new RulesForm(positions, who.isOwner(), figures));
    }

    private Div learned(Machine machine) {
        PageSection section = new PageSection(figures.text("placing.learned"));
        List<Position> measured = positions.measuredOn(machine.id(), Positions.MOST_PLACES);
        LearnedOverhang learned = positions.learned(machine);
        section.add(new Paragraph(
                learned.cuts() < 2
                        ? figures.text("placing.learned.none", NeededOverhang.FEWEST, learned.cuts())
                        : figures.text("placing.learned.turned", learned.cuts(), figures.number(learned.turned(), 2))));
        if (learned.cuts() >= 2 && learned.withMarks().isEmpty()) {
            Paragraph more =
                    new Paragraph(figures.text("placing.learned.more", NeededOverhang.FEWEST - learned.cuts()));
            more.addClassName("pw-soft");
            section.add(more);
        }
        LearnedReading.of(measured.stream()
                        .map(position -> position.visits().stream()
                                .map(visited -> visited.residual().mm())
                                .toList())
                        .toList())
                .ifPresent(reading -> section.add(new Paragraph(figures.text(
                        "placing.learned.reading",
                        reading.boards(),
                        figures.fine(Length.mm(reading.deviationMm())),
                        figures.fine(positions.rules().reading())))));
        learned.withMarks()
                .ifPresent(needed -> section.add(proposal("placing.proposed.marks", needed, measured, true)));
        learned.byJig().ifPresent(needed -> section.add(proposal("placing.proposed.jig", needed, measured, false)));
        return section;
    }

    private Div proposal(String key, NeededOverhang needed, List<Position> measured, boolean marks) {
        Length now = workshop.tradeNumbers().overhang();
        Length room =
                marks ? crosses.setting().wanted().map(Crosses::leastOverhang).orElse(Length.ZERO) : Length.ZERO;
        ProposedOverhang proposed = ProposedOverhang.of(needed, room, now, measured);
        boolean less = proposed.overhang().compareTo(now) < 0;
        Div words = new Div(
                new Verdict(less ? Verdict.Kind.GOOD : Verdict.Kind.WARN, figures.text(key, proposed.overhang(), now)),
                new Paragraph(figures.text(
                        "placing.proposed.sure",
                        Length.mm(needed.largest()),
                        needed.cuts(),
                        percent(needed.covered()))));
        words.addClassName("pw-stack");
        if (proposed.forCrosses()) {
            words.add(new Paragraph(figures.text("placing.proposed.crosses", proposed.overhang())));
        }
        words.add(new Paragraph(figures.text(
                less ? "placing.proposed.saves" : "placing.proposed.costs", percent(Math.abs(proposed.saved())))));
        if (who.isOwner()) {
            words.add(new Anchor("set-up/trade-numbers", figures.text("placing.proposed.set")));
        }
        return words;
    }

    private String percent(double share) {
        return figures.percent(
                Percent.ofFraction(java.math.BigDecimal.valueOf(share).setScale(3, java.math.RoundingMode.DOWN)));
    }

    @Override
    public String getPageTitle() {
        return figures.text("placing.places.page");
    }
}
