package puzzleworkshop.cutting.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.BeforeEnterEvent;
import com.vaadin.flow.router.BeforeEnterObserver;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.PermitAll;
import java.util.List;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.jobs.RunningTimes;
import puzzleworkshop.cutting.settings.Settings;
import puzzleworkshop.cutting.ui.settings.BoardNames;
import puzzleworkshop.cutting.ui.settings.SettingsMatrix;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.HouseUnits;
import puzzleworkshop.display.blocks.EmptyState;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.display.blocks.PageSection;
import puzzleworkshop.machines.Machine;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.machines.ui.MachineForm;
import puzzleworkshop.workshop.SignedIn;

/** The laser cutters, and for the chosen one the boards it has settings for and what it cut lately. */
@Route("machines")
@Menu(title = "cutting.title", order = 60)
@PermitAll
@StyleSheet("context://cutting.css")
public class MachinesView extends Div implements HasDynamicTitle, BeforeEnterObserver {

    private static final String CHOSEN = "machine";

    private final transient Machines machines;
    private final transient Settings settings;
    private final transient CutJobs jobs;
    private final transient RunningTimes times;
    private final transient TrialNotes trials;
    private final transient BoardNames boards;
    private final transient Formatter figures;
    private final transient SignedIn who;
    private final transient HouseUnits house;
    private long chosen;

    public MachinesView(
            Machines machines,
            Settings settings,
            CutJobs jobs,
            RunningTimes times,
            TrialNotes trials,
            BoardNames boards,
            Formatter figures,
            SignedIn who,
            HouseUnits house) {
        this.machines = machines;
        this.settings = settings;
        this.jobs = jobs;
        this.times = times;
        this.trials = trials;
        this.boards = boards;
        this.figures = figures;
        this.who = who;
        this.house = house;
        addClassName("pw-page");
    }

    @Override
    public void beforeEnter(BeforeEnterEvent event) {
        String asked = event.getLocation()
                .getQueryParameters()
                .getSingleParameter(CHOSEN)
                .orElse("");
        chosen = asked.matches("\\d{1,18}") ? Long.parseLong(asked) : 0;
        show();
    }

    private void show() {
        removeAll();
        List<Machine> all = machines.all();
        add(head());
        if (all.isEmpty()) {
            add(empty());
            return;
        }
        Machine shown = all.stream()
                .filter(machine -> machine.id() == chosen)
                .findFirst()
                .orElse(all.getFirst());
        Div cards = new Div();
        cards.addClassName("cutting-machines");
        for (Machine machine : all) {
            cards.add(new MachineCard(
                    machine,
                    times.ratio(machine.id()),
                    machine.id() == shown.id(),
                    figures,
                    new MachineCard.Deeds(
                            () -> choose(machine),
                            !who.isMaker(),
                            () -> edit(machine),
                            () -> doAndShow(() -> machines.makeStandard(machine.id())),
                            () -> doAndShow(() -> retireOrBack(machine)))));
        }
        trials.all().ifPresent(this::add);
        add(cards, new SettingsMatrix(shown, settings, boards, figures), latest(shown));
    }

    private Div head() {
        Button add = new Button(figures.text("cutting.machine.new"), event -> edit(usual()));
        add.addClassName("pw-push");
        add.setVisible(!who.isMaker());
        PageHead head = new PageHead(figures.text("cutting.title"), new Paragraph(figures.text("cutting.lead")), add);
        return head;
    }

    private Div empty() {
        Button first = new Button(figures.text("cutting.machine.first"), event -> edit(usual()));
        first.addThemeVariants(ButtonVariant.PRIMARY);
        first.setVisible(!who.isMaker());
        EmptyState empty = new EmptyState(figures.text("cutting.empty"), figures.text("cutting.empty.lead"), first);
        return empty;
    }

    private Div latest(Machine machine) {
        PageSection section = new PageSection(figures.text("cutting.latest", machine.name()));
        var cuts = jobs.latest(machine.id(), 10);
        if (cuts.isEmpty()) {
            Paragraph none = new Paragraph(figures.text("cutting.latest.none"));
            none.addClassName("pw-soft");
            section.add(none);
        }
        cuts.forEach(job -> section.add(new CutLine(job, boards, figures)));
        return section;
    }

    private Machine usual() {
        return Machine.usual(figures.text("cutting.machine.usual"), house.currency());
    }

    private void choose(Machine machine) {
        chosen = machine.id();
        getUI().ifPresent(
                        ui -> ui.getPage().getHistory().replaceState(null, "machines?" + CHOSEN + "=" + machine.id()));
        show();
    }

    private void edit(Machine machine) {
        new MachineForm(machine, machines, figures, who.isOwner(), this::choose).open();
    }

    private void retireOrBack(Machine machine) {
        if (machine.retired()) {
            machines.takeBack(machine.id());
        } else {
            machines.retire(machine.id());
        }
    }

    private void doAndShow(Runnable deed) {
        Feedback.unlessRefused(figures, "cutting.saved", deed);
        show();
    }

    @Override
    public String getPageTitle() {
        return figures.text("cutting.title");
    }
}
