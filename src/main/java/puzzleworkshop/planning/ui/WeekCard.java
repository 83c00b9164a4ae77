package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.Text;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dnd.DragSource;
import com.vaadin.flow.component.html.Anchor;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.util.function.Consumer;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.Minutes;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.ui.OrderPreview;
import puzzleworkshop.orders.ui.StageStrip;
import puzzleworkshop.planning.WeekPlan.Entry;
import puzzleworkshop.planning.schedule.Schedule;

/** One order in the week: picture, who, what, stage reached, day promised, verdict with its cause. */
class WeekCard extends Div {

    WeekCard(Entry entry, Formatter figures, Consumer<Entry> chooseDay) {
        Order order = entry.order();
        addClassName("planning-card");
        getElement().setAttribute("data-verdict", entry.outlook().verdict().name());
        Div picture = new Div(new OrderPreview(order, OrderPreview.Width.SMALL));
        picture.addClassName("planning-card-picture");
        Span who = new Span(order.customer().name());
        who.addClassName("planning-card-who");
        Span size = new Span(figures.size(order.puzzle().finished()));
        Span number = new Span(order.number());
        number.addClassName("pw-number");
        Span what = new Span(
                new Text(getTranslation("planning.card.what", order.puzzle().pieces(), order.quantity()) + " · "),
                number);
        size.addClassName("pw-small");
        what.addClassName("pw-small");
        Anchor words = new Anchor("orders/" + order.number(), who, size, what);
        words.addClassName("planning-card-words");
        // A link is dragged by itself, without the card around it, unless it is told not to.
        words.getElement().setAttribute("draggable", "false");
        Span due = new Span(order.promised()
                .map(day -> getTranslation("planning.card.promised", figures.day(day)))
                .orElse(getTranslation("planning.card.no-day")));
        due.addClassName("planning-card-due");
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
        Div foot = new Div(due, day);
        foot.addClassName("planning-card-foot");
        Span next = new Span(order.next()
                .map(stage -> getTranslation("planning.card.next", getTranslation(stage.textKey())))
                .orElse(""));
        next.addClassName("pw-small");
        PlanVerdict verdict = new PlanVerdict(entry.outlook(), figures);
        add(picture, words, new Div(new StageStrip(order), next), verdict);
        if (!entry.outlook().finish().equals(Schedule.NEVER)
                && entry.outlook().waitsFor().isEmpty()) {
            int spare = entry.outlook().slackMinutes();
            Span ready = new Span(getTranslation(
                    "planning.card.ready",
                    figures.day(entry.outlook().finish().toLocalDate()),
                    spare > 0 ? 1 : 0,
                    figures.minutes(Minutes.of(Math.max(0, spare)))));
            ready.addClassName("pw-small");
            verdict.add(ready);
        }
        add(foot);
        DragSource<WeekCard> drag = DragSource.create(this);
        drag.setDragData(order.id());
    }
}
