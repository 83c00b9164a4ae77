package puzzleworkshop.cutting.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextField;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import puzzleworkshop.cutting.jobs.CutEnds;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.jobs.CutTooQuick;
import puzzleworkshop.cutting.settings.CutParameters;
import puzzleworkshop.cutting.settings.Trial;
import puzzleworkshop.cutting.settings.TrialPhoto;
import puzzleworkshop.cutting.ui.settings.FindingForm;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.SafeQuestion;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.workshop.SignedIn;

/** The ways in which a cut ends, as forms: finished, broken off, given up. */
final class CutEndings {

    private final CutEnds ends;
    private final Formatter figures;
    private final SignedIn who;
    private final BiPredicate<CutJob, Supplier<CutJob>> again;
    private final Consumer<CutJob> ended;

    /**
     * @param again does something with a cut and shows what it is then; true when it was done
     * @param ended told once, when the cut has ended
     */
    CutEndings(
            CutEnds ends,
            Formatter figures,
            SignedIn who,
            BiPredicate<CutJob, Supplier<CutJob>> again,
            Consumer<CutJob> ended) {
        this.ends = ends;
        this.figures = figures;
        this.who = who;
        this.again = again;
        this.ended = ended;
    }

    /** For a cut that has not started: it is given up. */
    Component givingUp(CutJob job) {
        return breakOffWay(
                job,
                "cutting.job.give.up",
                reason -> Optional.of(ends.giveUp(ending(job), job.id(), reason, who.name())));
    }

    /** What came of it, in how many passes; and the way to stop it. */
    List<Component> ofRunning(CutJob job) {
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
                    .filter(seen -> again.test(job, () -> finish(job, passes.getValue(), seen, finding.photo())))
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
                        return Optional.of(ends.giveUp(ending(job), job.id(), reason, who.name()));
                    }
                    return finding.read()
                            .filter(seen -> passes.getValue() != null && !passes.isInvalid())
                            .map(seen -> ends.breakOff(
                                    ending(job),
                                    job.id(),
                                    reason,
                                    passes.getValue(),
                                    seen,
                                    finding.photo(),
                                    who.name()));
                },
                nothingToSee);
        return List.of(passes, finding, foot, broken);
    }

    /** A cut ends once, in whatever way: two windows that see it run mean the same end. */
    private static BookingKey ending(CutJob job) {
        return BookingKey.seen("cut-ended", job.id());
    }

    /** None yet, when somebody has to be asked first. */
    private CutJob finish(CutJob job, int passes, Trial.Finding seen, Optional<TrialPhoto> photo) {
        try {
            CutJob done = ends.finish(ending(job), job.id(), passes, seen, photo, who.name());
            ended.accept(done);
            return done;
        } catch (CutTooQuick tooQuick) {
            SafeQuestion question = new SafeQuestion(
                    figures.text("cutting.job.too-quick.title"),
                    figures.text("cutting.job.too-quick.not-yet"),
                    figures.text("cutting.job.too-quick.cut"));
            question.setText(figures.say(tooQuick));
            question.addConfirmListener(event -> again.test(job, () -> {
                CutJob done = ends.finishWithoutTime(ending(job), job.id(), seen.note(), who.name());
                ended.accept(done);
                return done;
            }));
            question.open();
            return null;
        }
    }

    /** Gives the job up before the start or stops it after: both ask why. */
    private Div breakOffWay(CutJob job, String key, Function<String, Optional<CutJob>> deed, Component... beside) {
        TextField reason = new TextField(figures.text("cutting.job.break.why"));
        reason.setMaxLength(1000);
        reason.setWidthFull();
        Button really = new BookButton(
                figures.text(key),
                () -> again.test(job, () -> {
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
}
