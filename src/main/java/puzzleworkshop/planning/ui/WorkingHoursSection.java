package puzzleworkshop.planning.ui;

import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.planning.LatenessWeights;
import puzzleworkshop.planning.calendar.WorkingTimes;
import puzzleworkshop.workshop.ui.SetUpPart;
import puzzleworkshop.workshop.ui.SetUpSection;

/** The part of Set-up about time: people's and machines' hours, free days, ways of delivery, what lateness costs. */
@org.springframework.stereotype.Component
class WorkingHoursSection implements SetUpSection {

    private final WorkingTimes times;
    private final LatenessWeights weights;
    private final Formatter figures;

    WorkingHoursSection(WorkingTimes times, LatenessWeights weights, Formatter figures) {
        this.times = times;
        this.weights = weights;
        this.figures = figures;
    }

    @Override
    public int place() {
        return 20;
    }

    @Override
    public List<SetUpPart> parts() {
        return List.of(
                new SetUpPart("planning.hours", () -> new HoursForm(times, figures)),
                new SetUpPart("planning.free", () -> new FreeDaysForm(times, figures)),
                new SetUpPart("planning.ways", () -> new WaysForm(times, figures)),
                new SetUpPart("planning.lateness", () -> new LatenessForm(weights, figures)));
    }
}
