package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderPreview;
import puzzleworkshop.orders.ui.StageStrip;
import puzzleworkshop.planning.WeekPlan.Entry;
import puzzleworkshop.planning.schedule.Schedule;

/** One order in the week: picture, who, what, stage reached, day promised, verdict with its cause. */
@StyleSheet("context://planning.css")
final class WeekCard {

    private WeekCard() {}

    static Markup of(Entry entry, Formatter figures) {
        Order order = entry.order();
        Markup what = Markup.of(
                "span",
                "pw-small",
                Markup.words(figures.text("planning.card.what", order.puzzle().pieces(), order.quantity()) + " · "),
                Markup.span("pw-number", order.number()));
        // A link is dragged by itself, without the card around it, unless it is told not to.
        Markup words = Markup.of(
                        "a",
                        "planning-card-words",
                        Markup.span("planning-card-who", order.customer().name()),
                        Markup.span("pw-small", figures.size(order.puzzle().finished())),
                        what)
                .with("href", "orders/" + order.number())
                .with("draggable", "false");
        Markup progress = Markup.div(
                "planning-card-progress",
                StageStrip.of(order, figures),
                Markup.span(
                        "pw-small",
                        order.next()
                                .map(stage -> figures.text("planning.card.next", figures.text(stage.textKey())))
                                .orElse("")));
        Markup due = Markup.span(
                "planning-card-due",
                order.promised()
                        .map(promised -> figures.text("planning.card.promised", promised))
                        .orElse(figures.text("planning.card.no-day")));
        return Markup.div(
                        "planning-card",
                        Markup.div("planning-card-picture", OrderPreview.of(order, OrderPreview.Width.SMALL, figures)),
                        words,
                        progress,
                        verdict(entry, figures),
                        due,
                        day(entry, figures))
                .with("data-verdict", entry.outlook().verdict().name())
                .with("data-order", Long.toString(order.id().value()))
                .with("draggable", "true");
    }

    private static Markup day(Entry entry, Formatter figures) {
        Order order = entry.order();
        return Markup.of(
                        "button",
                        "planning-card-day",
                        entry.pinned()
                                .map(pinned -> figures.text("planning.card.pinned", figures.day(pinned)))
                                .orElse(figures.text("planning.card.choose-day")))
                .with("type", "button")
                .with(
                        "aria-label",
                        figures.text(
                                "planning.card.choose-day.label",
                                order.number(),
                                order.customer().name()));
    }

    private static Markup verdict(Entry entry, Formatter figures) {
        if (entry.outlook().finish().equals(Schedule.NEVER)
                || entry.outlook().waitsFor().isPresent()) {
            return PlanVerdict.of(entry.outlook(), figures);
        }
        if (entry.toBeCollected()) {
            // its promise is kept: what is left of the day or of the year says nothing about it
            return PlanVerdict.of(
                    entry.outlook(), figures, Markup.span("pw-small", figures.text("planning.card.collect")));
        }
        int spare = entry.outlook().slackMinutes();
        return PlanVerdict.of(
                entry.outlook(),
                figures,
                Markup.span(
                        "pw-small",
                        figures.text(
                                "planning.card.ready",
                                entry.outlook().finish().toLocalDate(),
                                spare > 0 ? 1 : 0,
                                Minutes.of(Math.max(0, spare)))));
    }
}
