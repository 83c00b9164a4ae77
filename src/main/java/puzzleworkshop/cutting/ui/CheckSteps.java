package puzzleworkshop.cutting.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import puzzleworkshop.cutting.jobs.CheckAnswer;
import puzzleworkshop.cutting.jobs.CheckItem;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.measure.Length;

/** The checklist and the start below it. A row is made again only when its answer changed: a reason being typed stays. */
class CheckSteps extends Div {

    private final transient Formatter figures;
    private final transient Consumer<CheckItem> checked;
    private final transient BiConsumer<CheckItem, String> skipped;
    private final Map<CheckItem, Shown> rows = new EnumMap<>(CheckItem.class);
    private final Div list = new Div();
    private final Button start;
    private final Span missing = new Span();

    /** What a row stands on. */
    private record Shown(Optional<CheckAnswer> answer, Length gap, CheckRow row) {

        boolean stillSays(Optional<CheckAnswer> now, Length gapNow) {
            return answer.equals(now) && gap.equals(gapNow);
        }
    }

    CheckSteps(
            Formatter figures, Consumer<CheckItem> checked, BiConsumer<CheckItem, String> skipped, Runnable started) {
        this.figures = figures;
        this.checked = checked;
        this.skipped = skipped;
        addClassName("cutting-job-group");
        list.addClassName("cutting-checks");
        start = new Button(figures.text("cutting.job.start"), event -> started.run());
        start.addThemeVariants(ButtonVariant.PRIMARY);
        start.addClassName("cutting-big");
        missing.addClassName("pw-small");
        Div foot = new Div(start, missing);
        foot.addClassName("cutting-job-foot");
        SmallText caution = new SmallText(figures.text("cutting.job.caution"));
        add(list, caution, foot);
    }

    void show(CutJob job) {
        for (CheckItem item : CheckItem.values()) {
            Optional<CheckAnswer> answer = Optional.ofNullable(job.answers().get(item));
            Length gap = job.parameters().gap();
            Shown before = rows.get(item);
            if (before == null || !before.stillSays(answer, gap)) {
                CheckRow row = new CheckRow(
                        job, item, figures, () -> checked.accept(item), reason -> skipped.accept(item, reason));
                if (before == null) {
                    list.add(row);
                } else {
                    list.replace(before.row(), row);
                }
                rows.put(item, new Shown(answer, gap, row));
            }
        }
        start.setEnabled(job.state() == CutJob.State.READY);
        missing.setText(
                job.unanswered().isEmpty()
                        ? figures.text("cutting.job.ready")
                        : figures.text("cutting.job.missing", job.unanswered().size()));
    }
}
