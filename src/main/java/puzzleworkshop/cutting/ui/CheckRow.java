package puzzleworkshop.cutting.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import com.vaadin.flow.component.textfield.TextField;
import java.util.function.Consumer;
import puzzleworkshop.cutting.jobs.CheckAnswer;
import puzzleworkshop.cutting.jobs.CheckItem;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.display.Formatter;

/** One item of the checklist: a big tick, why it matters, and the way to skip it with a written reason. */
class CheckRow extends Div {

    private final transient Formatter figures;

    CheckRow(CutJob job, CheckItem item, Formatter figures, Runnable checked, Consumer<String> skipped) {
        this.figures = figures;
        addClassName("cutting-check");
        CheckAnswer answer = job.answers().get(item);
        Checkbox tick = new Checkbox(words(job, item));
        tick.setValue(answer != null && answer.done());
        tick.setReadOnly(answer != null && answer.done());
        tick.addValueChangeListener(event -> {
            if (event.isFromClient() && Boolean.TRUE.equals(event.getValue())) {
                checked.run();
            }
        });
        Span why = new Span(figures.text(item.whyKey()));
        why.addClassName("pw-small");
        add(tick, why);
        if (answer != null && !answer.done()) {
            getElement().setAttribute("data-skipped", true);
            Span reason = new Span(figures.text("cutting.check.skipped", answer.by(), answer.reason()));
            reason.addClassName("cutting-check-reason");
            add(reason);
        } else if (answer != null) {
            getElement().setAttribute("data-done", true);
        } else if (item.maySkip()) {
            add(skipWay(item, skipped));
        }
    }

    private String words(CutJob job, CheckItem item) {
        return switch (item) {
            case GAP_SET -> figures.text(item.textKey(), job.parameters().gap());
            case EYEWEAR ->
                figures.text(item.textKey(), job.setting().machine().beam().wavelengthNm());
            default -> figures.text(item.textKey());
        };
    }

    private Div skipWay(CheckItem item, Consumer<String> skipped) {
        TextField reason = new TextField();
        reason.setPlaceholder(figures.text("cutting.check.reason"));
        reason.setAriaLabel(
                figures.text("cutting.check.reason.of", figures.text("cutting.check.short." + item.name())));
        reason.setMaxLength(500);
        Button skip = new Button(figures.text("cutting.check.skip"), event -> {
            if (reason.getValue().strip().length() < CheckAnswer.SHORTEST_REASON) {
                reason.setInvalid(true);
                reason.setErrorMessage(figures.text("cutting.job.skip.reason", CheckAnswer.SHORTEST_REASON));
            } else {
                skipped.accept(reason.getValue());
            }
        });
        Div form = new Div(reason, skip);
        form.addClassName("cutting-check-skip");
        form.setVisible(false);
        Button open = new Button(figures.text("cutting.check.skip.open"), event -> {
            form.setVisible(!form.isVisible());
            if (form.isVisible()) {
                reason.focus();
            }
        });
        open.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        open.setAriaLabel(figures.text("cutting.check.skip.of", figures.text("cutting.check.short." + item.name())));
        Div way = new Div(open, form);
        way.addClassName("cutting-check-way");
        return way;
    }
}
