package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.Component;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import java.util.List;
import java.util.Optional;
import puzzleworkshop.delivery.HandOvers;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.ParcelChanged;
import puzzleworkshop.delivery.returns.Complaint;
import puzzleworkshop.delivery.returns.ComplaintChanged;
import puzzleworkshop.delivery.returns.Complaints;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.planning.ui.WeekSection;
import puzzleworkshop.runtime.Change;

/** On This week: what was not collected for long, and complaints that nobody has answered. */
@org.springframework.stereotype.Component
class WaitingSection implements WeekSection {

    private static final int MOST = 6;

    private final HandOvers handOvers;
    private final Complaints complaints;
    private final Formatter figures;

    WaitingSection(HandOvers handOvers, Complaints complaints, Formatter figures) {
        this.handOvers = handOvers;
        this.complaints = complaints;
        this.figures = figures;
    }

    @Override
    public int place() {
        return 20;
    }

    @Override
    public boolean restsOn(Change change) {
        return change instanceof ParcelChanged || change instanceof ComplaintChanged;
    }

    @Override
    public Optional<Component> show() {
        List<HandOvers.Entry> waiting = handOvers.notCollected();
        List<Complaint> open = complaints.undecided();
        if (waiting.isEmpty() && open.isEmpty()) {
            return Optional.empty();
        }
        Div lines = new Div();
        lines.addClassName("pw-stack");
        waiting.stream()
                .limit(MOST)
                .forEach(entry -> lines.add(line(
                        entry.first().number(),
                        figures.text(
                                "delivery.week.not-collected",
                                entry.first().customer().name(),
                                entry.first().number(),
                                entry.parcel().flatMap(Parcel::leftAt).orElseThrow()))));
        open.stream()
                .limit(MOST)
                .forEach(complaint -> lines.add(line(
                        complaint.order().number(),
                        figures.text(
                                "delivery.week.complaint",
                                complaint.order().number(),
                                complaint.who(),
                                complaint.at()))));
        return Optional.of(lines);
    }

    private static Component line(String number, String words) {
        Anchor link = new Anchor("orders/" + number, new Verdict(Verdict.Kind.WARN, words));
        return new Div(link);
    }
}
