package puzzleworkshop.placing.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H4;
import com.vaadin.flow.component.html.Span;
import java.util.List;
import java.util.Set;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.placing.PlacingRules;
import puzzleworkshop.placing.Position;
import puzzleworkshop.placing.given.GivenFile;

/** What stays with the cut for ever: where the print lay each time it was measured, and which files were given out. */
class PlaceRecord extends Div {

    /**
     * @param rules how exactly marks are read
     * @param traced places whose own frame was traced
     */
    PlaceRecord(
            List<Position> positions, PlacingRules rules, Set<Long> traced, List<GivenFile> given, Formatter figures) {
        addClassNames("placing-record", "pw-stack");
        if (!positions.isEmpty()) {
            add(new H4(figures.text("placing.record.places")));
            positions.forEach(position -> add(place(position, rules, traced, figures)));
        }
        if (!given.isEmpty()) {
            add(new H4(figures.text("placing.record.files")));
            given.forEach(file -> add(file(file, figures)));
        }
    }

    boolean isEmpty() {
        return getChildren().findAny().isEmpty();
    }

    private static Div place(Position position, PlacingRules rules, Set<Long> traced, Formatter figures) {
        Span words = new Span(figures.text(
                key(position, rules),
                Long.toString(position.id()),
                position.copy(),
                position.visits().size(),
                figures.number(Math.toDegrees(position.place().turn()), 2),
                figures.number(100 * (position.place().stretch() - 1), 2),
                position.spare()));
        Div row = new Div(words);
        row.addClassName("placing-record-row");
        for (Position.Visited seen : position.visits()) {
            Span mark = new Span(figures.text(
                    "placing.record.mark",
                    Integer.toString(seen.visit().mark()),
                    figures.number(seen.visit().shownX(), 3),
                    figures.number(seen.visit().shownY(), 3),
                    seen.residual()));
            mark.addClassName("pw-small");
            row.add(mark);
        }
        row.add(small(figures.text("placing.record.by", position.by(), figures.moment(position.at()))));
        if (traced.contains(position.id())) {
            row.add(small(figures.text("placing.record.traced")));
        }
        position.moved().ifPresent(at -> row.add(small(figures.text("placing.record.moved", figures.moment(at)))));
        return row;
    }

    private static String key(Position position, PlacingRules rules) {
        if (position.source() == Position.Source.JIG) {
            return "placing.record.jig";
        }
        return PlaceWords.tellStretch(position, rules) ? "placing.record.place" : "placing.record.place.as-drawn";
    }

    private static Div file(GivenFile file, Formatter figures) {
        Span digest = small(figures.text("placing.record.digest", file.sha256()));
        digest.addClassName("placing-digest");
        Div row = new Div(
                new Span(file.name()),
                small(file.setting()),
                small(figures.text("placing.record.by", file.by(), figures.moment(file.at()))),
                digest);
        row.addClassName("placing-record-row");
        return row;
    }

    private static Span small(String words) {
        Span small = new Span(words);
        small.addClassName("pw-small");
        return small;
    }
}
