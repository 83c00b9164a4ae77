package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Div;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.planning.LatenessWeights;
import puzzleworkshop.planning.calendar.WorkingTimes;
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
    public Component show() {
        Div all = new Div(
                new HoursForm(times, figures),
                new FreeDaysForm(times, figures),
                new WaysForm(times, figures),
                new LatenessForm(weights, figures));
        all.addClassName("planning-setup");
        return all;
    }
}
