package puzzleworkshop.cutting.ui;

import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.cutting.jobs.CutJob;
import puzzleworkshop.cutting.ui.settings.BoardNames;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Verdict;

/** One recorded cut in a line: for what, on which board, how it ended, how long it ran. */
class CutLine extends Still {

    CutLine(CutJob job, BoardNames boards, Formatter figures) {
        super(Markup.div("cutting-line", parts(job, boards, figures)));
    }

    private static List<Markup> parts(CutJob job, BoardNames boards, Formatter figures) {
        Verdict.Kind kind = switch (job.state()) {
            case DONE -> Verdict.Kind.GOOD;
            case FORBIDDEN, BROKEN_OFF -> Verdict.Kind.BAD;
            case CHECKING, READY -> Verdict.Kind.WAIT;
            case RUNNING -> Verdict.Kind.WARN;
        };
        List<Markup> parts = new ArrayList<>();
        parts.add(Markup.link("machines/cuts/" + job.id(), job.label()));
        parts.add(Markup.span("pw-soft", boards.of(job.setting().board())));
        parts.add(Verdict.of(kind, figures.text("cutting.job.state." + job.state())));
        job.took()
                .filter(took -> job.state() == CutJob.State.DONE)
                .ifPresent(took -> parts.add(Markup.span("pw-number", figures.minutes(took))));
        job.ended().ifPresent(end -> parts.add(Markup.span("pw-small", figures.moment(end.at()))));
        return parts;
    }
}
