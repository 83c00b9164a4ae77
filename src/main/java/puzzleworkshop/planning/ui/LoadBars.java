package puzzleworkshop.planning.ui;

import java.time.LocalDate;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.display.Texts;
import puzzleworkshop.display.Verdict;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.planning.schedule.Load;
import puzzleworkshop.planning.schedule.Schedule;
import puzzleworkshop.workshop.Stage;

/** How full the days are: for hands and laser what the plan lays on each day, and a mark where more is needed than fits. */
class LoadBars extends Still {

    LoadBars(Schedule plan, List<LocalDate> days, Formatter figures) {
        super(Markup.div(
                "planning-loads",
                resource(Stage.Resource.HANDS, plan, days, figures),
                resource(Stage.Resource.LASER, plan, days, figures)));
    }

    private static Markup resource(Stage.Resource resource, Schedule plan, List<LocalDate> days, Formatter figures) {
        List<Load> loads = days.stream().map(day -> plan.load(day, resource)).toList();
        Load sum = loads.stream().reduce(Load::plus).orElseThrow();
        List<Markup> head = new ArrayList<>();
        head.add(Markup.of("h2", "", figures.text("planning.resource." + resource.name())));
        head.add(Markup.span(
                "pw-number",
                figures.text("planning.load.planned", Minutes.of(sum.planned()), Minutes.of(sum.capacity()))));
        if (sum.isOver()) {
            LocalDate by = loads.stream()
                    .filter(Load::isOver)
                    .map(Load::day)
                    .reduce((a, b) -> b)
                    .orElseThrow();
            head.add(Verdict.of(
                    Verdict.Kind.BAD, figures.text("planning.load.short-by", Minutes.of(sum.missing()), by)));
        }
        int most = loads.stream()
                .mapToInt(load -> load.capacity() + load.missing())
                .max()
                .orElse(1);
        return Markup.div(
                "planning-load",
                Markup.div("planning-load-head", head),
                Markup.div(
                        "planning-load-bars",
                        loads.stream()
                                .map(load -> bar(load, Math.max(1, most), resource, figures))
                                .toList()));
    }

    private static Markup bar(Load load, int most, Stage.Resource resource, Formatter figures) {
        List<Markup> parts = new ArrayList<>();
        parts.add(part("planning-load-capacity", "height: " + percent(load.capacity(), most)));
        parts.add(part("planning-load-planned", "height: " + percent(load.planned(), most)));
        if (load.isOver()) {
            parts.add(part(
                    "planning-load-over",
                    "bottom: " + percent(load.capacity(), most) + "; height: " + percent(load.missing(), most)));
        }
        String words = figures.text(
                load.isOver() ? "planning.load.day-over" : "planning.load.day",
                figures.text("planning.resource." + resource.name()),
                load.day(),
                Minutes.of(load.planned()),
                Minutes.of(load.capacity()),
                Minutes.of(load.missing()));
        Markup column = Markup.div("planning-load-column", parts)
                .with("role", "img")
                .with("aria-label", words)
                .with("title", words);
        String name = load.day().getDayOfWeek().getDisplayName(TextStyle.SHORT, Texts.LOCALE);
        return Markup.div(
                "planning-load-day",
                Markup.span("pw-small", figures.number(load.planned() / 60.0, 1)),
                column,
                Markup.span("pw-small", name + (load.isOver() ? " !" : "")));
    }

    private static Markup part(String cssClass, String style) {
        return Markup.div(cssClass).with("style", style);
    }

    private static String percent(int minutes, int most) {
        return Math.round(1000.0 * minutes / most) / 10.0 + "%";
    }
}
