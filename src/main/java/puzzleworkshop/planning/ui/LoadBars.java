package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.H2;
import com.vaadin.flow.component.html.Span;
import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Texts;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.planning.schedule.Load;
import puzzleworkshop.planning.schedule.Schedule;
import puzzleworkshop.workshop.Stage;

/** How full the days are: for hands and laser what the plan lays on each day, and a mark where more is needed than fits. */
class LoadBars extends Div {

    LoadBars(Schedule plan, List<LocalDate> days, Formatter figures) {
        addClassName("planning-loads");
        add(resource(Stage.Resource.HANDS, plan, days, figures), resource(Stage.Resource.LASER, plan, days, figures));
    }

    private Div resource(Stage.Resource resource, Schedule plan, List<LocalDate> days, Formatter figures) {
        List<Load> loads = days.stream().map(day -> plan.load(day, resource)).toList();
        Load sum = loads.stream().reduce(Load::plus).orElseThrow();
        H2 title = new H2(getTranslation("planning.resource." + resource.name()));
        Span total = new Span(getTranslation(
                "planning.load.planned",
                figures.minutes(Minutes.of(sum.planned())),
                figures.minutes(Minutes.of(sum.capacity()))));
        total.addClassName("pw-number");
        Div head = new Div(title, total);
        if (sum.isOver()) {
            LocalDate by = loads.stream()
                    .filter(Load::isOver)
                    .map(Load::day)
                    .reduce((a, b) -> b)
                    .orElseThrow();
            head.add(new Verdict(
                    Verdict.Kind.BAD,
                    getTranslation(
                            "planning.load.short-by", figures.minutes(Minutes.of(sum.missing())), figures.day(by))));
        }
        head.addClassName("planning-load-head");
        Div bars = new Div();
        bars.addClassName("planning-load-bars");
        int most = loads.stream()
                .mapToInt(load -> load.capacity() + load.missing())
                .max()
                .orElse(1);
        for (Load load : loads) {
            bars.add(bar(load, Math.max(1, most), resource, figures));
        }
        Div all = new Div(head, bars);
        all.addClassName("planning-load");
        return all;
    }

    private Div bar(Load load, int most, Stage.Resource resource, Formatter figures) {
        Div capacity = new Div();
        capacity.addClassName("planning-load-capacity");
        capacity.getStyle().set("height", percent(load.capacity(), most));
        Div planned = new Div();
        planned.addClassName("planning-load-planned");
        planned.getStyle().set("height", percent(load.planned(), most));
        Div column = new Div(capacity, planned);
        column.addClassName("planning-load-column");
        if (load.isOver()) {
            Div over = new Div();
            over.addClassName("planning-load-over");
            over.getStyle().set("bottom", percent(load.capacity(), most)).set("height", percent(load.missing(), most));
            column.add(over);
        }
        String words = getTranslation(
                load.isOver() ? "planning.load.day-over" : "planning.load.day",
                getTranslation("planning.resource." + resource.name()),
                figures.day(load.day()),
                figures.minutes(Minutes.of(load.planned())),
                figures.minutes(Minutes.of(load.capacity())),
                figures.minutes(Minutes.of(load.missing())));
        column.getElement().setAttribute("role", "img");
        column.getElement().setAttribute("aria-label", words);
        column.getElement().setAttribute("title", words);
        Span name = new Span(
                load.day().getDayOfWeek().getDisplayName(TextStyle.SHORT, Texts.LOCALE) + (load.isOver() ? " !" : ""));
        name.addClassName("pw-small");
        Span hours = new Span(figures.number(load.planned() / 60.0, 1));
        hours.addClassName("pw-small");
        Div all = new Div(hours, column, name);
        all.addClassName("planning-load-day");
        return all;
    }

    private static String percent(int minutes, int most) {
        return Math.round(1000.0 * minutes / most) / 10.0 + "%";
    }
}
