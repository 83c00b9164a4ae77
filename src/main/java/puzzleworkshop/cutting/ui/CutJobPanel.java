package puzzleworkshop.cutting.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.JavaScript;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.springframework.beans.factory.config.ConfigurableBeanFactory;
import org.springframework.context.annotation.Scope;
import puzzleworkshop.cutting.jobs.CutEnds;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.jobs.RunningTimes;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.time.CutTime;
import puzzleworkshop.cutting.time.MachineRatio;
import puzzleworkshop.cutting.ui.settings.BoardNames;
import puzzleworkshop.cutting.ui.settings.DialledIn;
import puzzleworkshop.cutting.ui.settings.ParameterFields;
import puzzleworkshop.cutting.ui.settings.StateMark;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.workshop.SignedIn;

/**
 * One cut at the bench, from its checklist to its outcome. Ask for a new one from Spring wherever a cut is shown
 * ({@code ObjectProvider<CutJobPanel>}), then {@link #show}.
 */
@org.springframework.stereotype.Component
@Scope(ConfigurableBeanFactory.SCOPE_PROTOTYPE)
@StyleSheet("context://cutting.css")
@JavaScript("context://cutting.js")
public class CutJobPanel extends Div {

    private final transient CutJobs jobs;
    private final transient CutEndings endings;
    private final transient RunningTimes times;
    private final transient BoardNames boards;
    private final transient Formatter figures;
    private final transient SignedIn who;
    private final transient List<CutJobPart> parts;
    private final Map<CutJobPart, PartPlace> added = new HashMap<>();
    private final Div head = new Div();
    private final Div beside = new Div();
    private final Div steps = new Div();
    private final Div dial = new Div();
    private CheckSteps checks;
    private transient CutJob shown;
    private transient Consumer<CutJob> started = job -> {};
    private transient Consumer<CutJob> ended = job -> {};
    private transient Function<CutParameters, Optional<CutTime>> reckoned = parameters -> Optional.empty();

    CutJobPanel(
            CutJobs jobs,
            CutEnds ends,
            RunningTimes times,
            BoardNames boards,
            List<CutJobPart> parts,
            Formatter figures,
            SignedIn who) {
        this.parts = parts;
        this.jobs = jobs;
        this.endings = new CutEndings(ends, figures, who, this::again, job -> ended.accept(job));
        this.times = times;
        this.boards = boards;
        this.figures = figures;
        this.who = who;
        addClassName("cutting-job");
        List.of(head, beside, steps).forEach(group -> group.addClassName("cutting-job-group"));
        add(head, beside, steps);
    }

    /** Shows a job in place of the one before; what is typed for a cut stays while the cut stands at the same step. */
    public CutJobPanel show(CutJob job) {
        Optional<CutJob> before = Optional.ofNullable(shown).filter(known -> known.id() == job.id());
        shown = job;
        head.removeAll();
        head.add(head(job));
        if (before.isEmpty() || job.state() == CutJob.State.FORBIDDEN) {
            added.clear();
            beside.removeAll();
        }
        if (job.state() != CutJob.State.FORBIDDEN) {
            parts.forEach(part -> added.computeIfAbsent(part, this::place).show(job));
        }
        if (before.filter(known -> staysAtItsStep(known, job)).isEmpty()) {
            steps.removeAll();
            steps(job);
        }
        return this;
    }

    private void steps(CutJob job) {
        switch (job.state()) {
            case FORBIDDEN -> forbidden(job);
            case CHECKING, READY -> before(job);
            case RUNNING -> during(job);
            case DONE, BROKEN_OFF -> after(job);
        }
    }

    /** Whether what is asked for at this step still stands: then its forms stay, and only the answers are renewed. */
    private boolean staysAtItsStep(CutJob known, CutJob job) {
        boolean checking = isChecking(known) && isChecking(job);
        if (checking) {
            checks.show(job);
            if (!known.parameters().equals(job.parameters())) {
                dial.removeAll();
                dial.add(dialWay(job));
            }
        }
        return checking || known.state() == CutJob.State.RUNNING && job.state() == CutJob.State.RUNNING;
    }

    private static boolean isChecking(CutJob job) {
        return job.state() == CutJob.State.CHECKING || job.state() == CutJob.State.READY;
    }

    private PartPlace place(CutJobPart part) {
        PartPlace place = new PartPlace(part, this::renew);
        beside.add(place);
        return place;
    }

    private void renew() {
        jobs.find(shown.id()).ifPresent(this::show);
    }

    /** Told when the beam goes on: what stands around the panel changes then, not while its outcome is being typed. */
    public void whenStarted(Consumer<CutJob> listener) {
        started = listener;
    }

    /** Told once, when the cut has ended (done or broken off). */
    public void whenEnded(Consumer<CutJob> listener) {
        ended = listener;
    }

    /** How long the lines take with other parameters, for the estimate when something else is dialled in. */
    public void reckon(Function<CutParameters, CutTime> time) {
        reckoned = parameters -> Optional.of(time.apply(parameters));
    }

    private Div head(CutJob job) {
        Div head = new Div();
        head.addClassName("cutting-job-head");
        Div title = new Div(
                new H2(figures.text("cutting.job.title", job.label())),
                new StateMark(job.setting().state(), figures));
        title.addClassName("pw-verdict-line");
        Paragraph where = new Paragraph(figures.text(
                "cutting.job.where",
                job.setting().machine().name(),
                boards.of(job.setting().board())));
        where.addClassName("pw-soft");
        head.add(title, where, new DialledIn(job.parameters(), figures));
        job.estimate().ifPresent(minutes -> head.add(time(job, minutes)));
        if (!job.setting().isProven() && job.started().isEmpty()) {
            head.add(new Note(Note.Kind.WARN, figures.text("cutting.job.not.proven")));
        }
        return head;
    }

    private Paragraph time(CutJob job, Minutes running) {
        MachineRatio ratio = times.ratio(job.setting().machine().id());
        double off = 1.2816 * ratio.spread();
        SmallText time = new SmallText(figures.text(
                "cutting.job.time",
                running.times(Math.max(ratio.median() - off, ratio.median() / 4)),
                running.times(ratio.median() + off)));
        return time;
    }

    private void forbidden(CutJob job) {
        for (Sentence reason : job.workpiece().forbidden()) {
            steps.add(new Note(Note.Kind.BAD, figures.say(reason)));
        }
        steps.add(new Verdict(Verdict.Kind.BAD, figures.text("cutting.job.stopped")), endings.givingUp(job));
    }

    private void before(CutJob job) {
        checks = new CheckSteps(
                figures,
                item -> again(job, () -> jobs.check(job.id(), item, who.name())),
                (item, reason) -> again(job, () -> jobs.skip(job.id(), item, reason, who.name())),
                () -> again(job, () -> {
                    CutJob running = jobs.start(job.id(), who.name());
                    started.accept(running);
                    return running;
                }));
        checks.show(job);
        dial.removeAll();
        dial.add(dialWay(job));
        steps.add(dial, checks, endings.givingUp(job));
    }

    /** Other parameters for this job alone: the setting stays as it is. */
    private Div dialWay(CutJob job) {
        ParameterFields fields = new ParameterFields(job.setting(), job.parameters(), figures);
        Button dial = new Button(
                figures.text("cutting.job.dial.do"),
                event -> fields.read()
                        .ifPresent(typed -> again(job, () -> jobs.dial(job.id(), typed, reckoned.apply(typed)))));
        Div form = new Div(fields, dial);
        form.addClassName("pw-stack");
        form.setVisible(false);
        Button open = new Button(figures.text("cutting.job.dial"), event -> form.setVisible(!form.isVisible()));
        open.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        return new Div(open, form);
    }

    private void during(CutJob job) {
        Span clock = new Span();
        clock.addClassName("cutting-clock");
        clock.getElement()
                .setAttribute(
                        "data-since",
                        Long.toString(job.started().orElseThrow().at().toEpochMilli()));
        clock.getElement().executeJs("window.cuttingClock && window.cuttingClock(this)");
        Div running = new Div(clock, new Paragraph(figures.text("cutting.job.stay")));
        running.addClassName("cutting-running");
        steps.add(running);
        steps.add(endings.ofRunning(job));
    }

    private void after(CutJob job) {
        boolean done = job.state() == CutJob.State.DONE;
        steps.add(new Verdict(
                done ? Verdict.Kind.GOOD : Verdict.Kind.BAD,
                figures.text(done ? "cutting.job.done" : "cutting.job.broken")));
        job.took()
                .ifPresent(took -> steps.add(new Paragraph(figures.text(
                        "cutting.job.took", took, job.ended().orElseThrow().by()))));
        if (!job.note().isBlank()) {
            steps.add(new Note(Note.Kind.PLAIN, job.note()));
        }
        job.skipped()
                .forEach(skip -> steps.add(new Note(
                        Note.Kind.WARN,
                        figures.text(
                                "cutting.check.skipped.after",
                                figures.text(
                                        "cutting.check.short." + skip.item().name()),
                                skip.by(),
                                skip.reason()))));
    }

    /** True when it was done and is shown. */
    private boolean again(CutJob job, Supplier<CutJob> deed) {
        try {
            Optional<CutJob> done = Optional.ofNullable(deed.get());
            done.ifPresent(this::show);
            return done.isPresent();
        } catch (Refused refused) {
            Feedback.tell(figures.say(refused), true);
            jobs.find(job.id()).filter(now -> now.state() != shown.state()).ifPresent(this::show);
            return false;
        }
    }
}
