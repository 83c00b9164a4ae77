package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.dnd.DragSource;
import com.vaadin.flow.component.html.Div;
import java.util.function.Consumer;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderPreview;
import puzzleworkshop.orders.ui.StageStrip;
import puzzleworkshop.planning.WeekPlan.Entry;
import puzzleworkshop.planning.schedule.Schedule;

/** One order in the week: picture, who, what, stage reached, day promised, verdict with its cause. */
@StyleSheet("context://planning.css")
class WeekCard extends Div {

    WeekCard(Entry entry, Formatter figures, Consumer<Entry> chooseDay) {
        Order order = entry.order();
        addClassName("planning-card");
        getElement().setAttribute("data-verdict", entry.outlook().verdict().name());
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
        Still all = new Still(Markup.div(
                "planning-still",
                Markup.div("planning-card-picture", OrderPreview.of(order, OrderPreview.Width.SMALL, figures)),
                words,
                progress,
                verdict(entry, figures),
                due));
        Button day = new Button(
                entry.pinned()
                        .map(pinned -> getTranslation("planning.card.pinned", figures.day(pinned)))
                        .orElse(getTranslation("planning.card.choose-day")),
                e -> chooseDay.accept(entry));
        day.addThemeVariants(ButtonVariant.TERTIARY, ButtonVariant.SMALL);
        day.setAriaLabel(getTranslation(
                "planning.card.choose-day.label",
                order.number(),
                order.customer().name()));
        add(all, day);
        DragSource<WeekCard> drag = DragSource.create(this);
        drag.setDragData(order.id());
    }

    private static Markup verdict(Entry entry, Formatter figures) {
        if (entry.outlook().finish().equals(Schedule.NEVER)
                || entry.outlook().waitsFor().isPresent()) {
            return PlanVerdict.of(entry.outlook(), figures);
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
