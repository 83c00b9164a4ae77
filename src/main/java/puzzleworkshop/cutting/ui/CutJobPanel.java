package puzzleworkshop.cutting.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.dependency.JavaScript;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextField;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import org.springframework.beans.factory.config.ConfigurableBeanFactory;
import org.springframework.context.annotation.Scope;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutJobs;
import puzzleworkshop.cutting.jobs.CutTooQuick;
import puzzleworkshop.cutting.jobs.RunningTimes;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.cutting.settings.TrialPhoto;
import puzzleworkshop.cutting.time.CutTime;
import puzzleworkshop.cutting.time.MachineRatio;
import puzzleworkshop.cutting.ui.settings.BoardNames;
import puzzleworkshop.cutting.ui.settings.DialledIn;
import puzzleworkshop.cutting.ui.settings.FindingForm;
import puzzleworkshop.cutting.ui.settings.ParameterFields;
import puzzleworkshop.cutting.ui.settings.StateMark;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.SafeQuestion;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
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
            RunningTimes times,
            BoardNames boards,
            List<CutJobPart> parts,
            Formatter figures,
            SignedIn who) {
        this.parts = parts;
        this.jobs = jobs;
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
        steps.add(
                new Verdict(Verdict.Kind.BAD, figures.text("cutting.job.stopped")),
                breakOffWay(
                        job,
                        "cutting.job.give.up",
                        reason -> Optional.of(jobs.giveUp(ending(job), job.id(), reason, who.name()))));
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
        steps.add(
                dial,
                checks,
                breakOffWay(
                        job,
                        "cutting.job.give.up",
                        reason -> Optional.of(jobs.giveUp(ending(job), job.id(), reason, who.name()))));
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
        IntegerField passes = new IntegerField(figures.text("cutting.job.passes.made"));
        passes.setValue(job.parameters().passes());
        passes.setMin(1);
        passes.setMax(CutParameters.MOST_PASSES);
        passes.setStepButtonsVisible(true);
        FindingForm finding = new FindingForm(figures);
        Button finish = new BookButton(figures.text("cutting.job.finish"), () -> {
            boolean counted = passes.getValue() != null && !passes.isInvalid();
            if (!counted) {
                passes.setInvalid(true);
                passes.focus();
            }
            return finding.read()
                    .filter(seen -> counted)
                    .filter(seen -> again(job, () -> finish(job, passes.getValue(), seen, finding.photo())))
                    .isPresent();
        });
        finish.addThemeVariants(ButtonVariant.PRIMARY);
        finish.addClassName("cutting-big");
        Div foot = new Div(finish);
        foot.addClassName("cutting-job-foot");
        Checkbox nothingToSee = new Checkbox(figures.text("cutting.job.break.nothing"));
        Div broken = breakOffWay(
                job,
                "cutting.job.break",
                reason -> {
                    if (nothingToSee.getValue()) {
                        return Optional.of(jobs.giveUp(ending(job), job.id(), reason, who.name()));
                    }
                    return finding.read()
                            .filter(seen -> passes.getValue() != null && !passes.isInvalid())
                            .map(seen -> jobs.breakOff(
                                    ending(job),
                                    job.id(),
                                    reason,
                                    passes.getValue(),
                                    seen,
                                    finding.photo(),
                                    who.name()));
                },
                nothingToSee);
        steps.add(running, passes, finding, foot, broken);
    }

    /** A cut ends once, in whatever way: two windows that see it run mean the same end. */
    private static BookingKey ending(CutJob job) {
        return BookingKey.seen("cut-ended", job.id());
    }

    /** None yet, when somebody has to be asked first. */
    private CutJob finish(CutJob job, int passes, Trial.Finding seen, Optional<TrialPhoto> photo) {
        try {
            CutJob done = jobs.finish(ending(job), job.id(), passes, seen, photo, who.name());
            ended.accept(done);
            return done;
        } catch (CutTooQuick tooQuick) {
            SafeQuestion question = new SafeQuestion(
                    figures.text("cutting.job.too-quick.title"),
                    figures.text("cutting.job.too-quick.not-yet"),
                    figures.text("cutting.job.too-quick.cut"));
            question.setText(figures.say(tooQuick));
            question.addConfirmListener(event -> again(job, () -> {
                CutJob done = jobs.finishWithoutTime(ending(job), job.id(), seen.note(), who.name());
                ended.accept(done);
                return done;
            }));
            question.open();
            return null;
        }
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

    /** Gives the job up before the start or stops it after: both ask why. */
    private Div breakOffWay(CutJob job, String key, Function<String, Optional<CutJob>> deed, Component... beside) {
        TextField reason = new TextField(figures.text("cutting.job.break.why"));
        reason.setMaxLength(1000);
        reason.setWidthFull();
        Button really = new BookButton(
                figures.text(key),
                () -> again(job, () -> {
                    Optional<CutJob> broken = deed.apply(reason.getValue());
                    broken.ifPresentOrElse(ended, () -> Feedback.tell(figures.text("cutting.job.break.outcome"), true));
                    return broken.orElse(null);
                }));
        really.addThemeVariants(ButtonVariant.ERROR);
        Div form = new Div(reason);
        form.add(beside);
        form.add(really);
        form.addClassName("pw-stack");
        form.setVisible(false);
        Button open = new Button(figures.text(key + ".open"), event -> form.setVisible(!form.isVisible()));
        open.addThemeVariants(ButtonVariant.TERTIARY);
        return new Div(open, form);
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

    /** Where one part of an upper room stands on the panel of a cut; it is exchanged only when it cannot be renewed. */
    private static final class PartPlace extends Div {

        private final transient CutJobPart part;
        private final transient Runnable changed;
        private transient Optional<Component> content = Optional.empty();

        PartPlace(CutJobPart part, Runnable changed) {
            this.part = part;
            this.changed = changed;
            addClassName("cutting-job-group");
        }

        void show(CutJob job) {
            boolean renewed = content.filter(CutJobPart.Renewable.class::isInstance)
                    .map(CutJobPart.Renewable.class::cast)
                    .filter(shown -> shown.renew(job))
                    .isPresent();
            if (!renewed) {
                removeAll();
                content = part.show(job, changed);
                content.ifPresent(this::add);
            }
        }
    }
}
