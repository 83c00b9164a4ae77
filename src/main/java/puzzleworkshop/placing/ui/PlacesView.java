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
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.geometry.align.LearnedReading;
import puzzleworkshop.geometry.align.NeededOverhang;
import puzzleworkshop.geometry.align.ProposedOverhang;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.MachineAxes;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.placing.LearnedOverhang;
import puzzleworkshop.placing.LearnedPlace;
import puzzleworkshop.placing.LearnedPlaces;
import puzzleworkshop.placing.Position;
import puzzleworkshop.placing.Positions;
import puzzleworkshop.placing.UsualSpot;
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
    private final transient LearnedPlaces learned;
    private final transient PrintedCrosses crosses;
    private final transient Workshop workshop;
    private final transient SignedIn who;
    private final transient Formatter figures;

    public PlacesView(
            Machines machines,
            Positions positions,
            LearnedPlaces learned,
            PrintedCrosses crosses,
            Workshop workshop,
            SignedIn who,
            Formatter figures) {
        this.machines = machines;
        this.positions = positions;
        this.learned = learned;
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
                overhang(machine.get()),
                byHand(machine.get()),
                new JigSection(machine.get(), workshop, figures),
                new FenceSection(machine.get(), learned, who.name(), figures),
                new RulesForm(positions, who.isOwner(), figures));
    }

    private Div overhang(Machine machine) {
        PageSection section = new PageSection(figures.text("placing.learned"));
        List<Position> measured = learned.measuredOn(machine);
        LearnedOverhang taught = learned.overhang(machine);
        section.add(new Paragraph(
                taught.cuts() < 2
                        ? figures.text("placing.learned.none", NeededOverhang.FEWEST, taught.cuts())
                        : figures.text("placing.learned.turned", taught.cuts(), figures.number(taught.turned(), 2))));
        if (taught.cuts() >= 2 && taught.withMarks().isEmpty()) {
            Paragraph more = new Paragraph(figures.text("placing.learned.more", NeededOverhang.FEWEST - taught.cuts()));
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
        taught.withMarks().ifPresent(needed -> section.add(proposal("placing.proposed.marks", needed, measured, true)));
        taught.byJig().ifPresent(needed -> section.add(proposal("placing.proposed.jig", needed, measured, false)));
        taught.byEye().ifPresent(needed -> section.add(proposal("placing.proposed.eye", needed, measured, false)));
        if (who.isOwner() && taught.withMarks().isPresent()) {
            section.add(new Anchor("set-up/trade-numbers", figures.text("placing.proposed.set")));
        }
        return section;
    }

    /** Boards that were laid without the fence: where they come, and what that is good for. */
    private Div byHand(Machine machine) {
        PageSection section = new PageSection(figures.text("placing.hand"));
        LearnedPlace hand = learned.byHand(machine);
        if (hand.farthestTurned().isEmpty()) {
            section.add(new Paragraph(figures.text(
                    "placing.hand.none",
                    NeededOverhang.FEWEST,
                    hand.since(),
                    workshop.tradeNumbers().stickShift(),
                    figures.number(workshop.tradeNumbers().stickTurnDegrees(), 2))));
            return section;
        }
        UsualSpot usual = hand.spot().orElseThrow();
        MachineAxes axes = machine.control().axes();
        section.add(
                new Paragraph(figures.text(
                        "placing.hand.turned",
                        hand.learnedFrom(),
                        figures.number(Math.toDegrees(usual.turn()), 2),
                        figures.number(hand.turnDegrees(), 2))),
                new Paragraph(
                        hand.shift().mm() > LearnedPlace.FOUND_BY_EYE_MM
                                ? figures.text("placing.hand.anywhere", hand.shift())
                                : figures.text(
                                        "placing.hand.spot",
                                        figures.number(axes.shownX(usual.corner(), machine.bed()), 1),
                                        figures.number(axes.shownY(usual.corner(), machine.bed()), 1),
                                        hand.shift())),
                new SmallText(figures.text("placing.hand.why")));
        return section;
    }

    private Div proposal(String key, NeededOverhang needed, List<Position> measured, boolean marks) {
        Length now = workshop.tradeNumbers().overhang();
        Length room =
                marks ? crosses.setting().wanted().map(Crosses::leastOverhang).orElse(Length.ZERO) : Length.ZERO;
        ProposedOverhang proposed = ProposedOverhang.of(
                needed, room, now, measured.stream().map(Position::finished).toList());
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
