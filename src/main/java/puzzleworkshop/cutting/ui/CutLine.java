package puzzleworkshop.cutting.ui;

import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.ui.settings.BoardNames;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;

/** One recorded cut in a line: for what, on which board, how it ended, how long it ran. */
class CutLine extends Div {

    CutLine(CutJob job, BoardNames boards, Formatter figures) {
        addClassName("cutting-line");
        Anchor label = new Anchor("machines/cuts/" + job.id(), job.label());
        Span board = new Span(boards.of(job.setting().board()));
        board.addClassName("pw-soft");
        Verdict.Kind kind = switch (job.state()) {
            case DONE -> Verdict.Kind.GOOD;
            case FORBIDDEN, BROKEN_OFF -> Verdict.Kind.BAD;
            case CHECKING, READY -> Verdict.Kind.WAIT;
            case RUNNING -> Verdict.Kind.WARN;
        };
        add(label, board, new Verdict(kind, figures.text("cutting.job.state." + job.state())));
        job.took().filter(took -> job.state() == CutJob.State.DONE).ifPresent(took -> {
            Span time = new Span(figures.minutes(took));
            time.addClassName("pw-number");
            add(time);
        });
        job.ended().ifPresent(end -> {
            Span at = new Span(figures.moment(end.at()));
            at.addClassName("pw-small");
            add(at);
        });
    }
}
