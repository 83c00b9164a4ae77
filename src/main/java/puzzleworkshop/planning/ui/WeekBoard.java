package puzzleworkshop.planning.ui;

import com.vaadin.flow.component.dependency.JavaScript;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.dom.DomEvent;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.planning.WeekPlan.Entry;

/**
 * The cards of the week, a column for each day. One part of the page for all of them: with sixty open orders a component for
 * each card, its words, its button and its dragging was most of what the page took.
 */
@JavaScript("context://planning.js")
@StyleSheet("context://planning.css")
class WeekBoard extends Still {

    private static final int MOST_CARDS = 24;
    private static final String ORDER = "event.detail.order";
    private static final String DAY = "event.detail.day";

    private final transient Consumer<OrderId> chooseDay;
    private final transient BiConsumer<OrderId, LocalDate> moved;

    /** @param day cards can be dragged to; absent: to none */
    record Column(String title, List<Entry> entries, Optional<LocalDate> day) {}

    /**
     * @param chooseDay told the order whose day is to be chosen
     * @param moved told the order that was dragged, and to which day
     */
    WeekBoard(
            List<Column> columns,
            Formatter figures,
            Consumer<OrderId> chooseDay,
            BiConsumer<OrderId, LocalDate> moved) {
        super(Markup.div(
                "planning-columns",
                columns.stream().map(column -> markup(column, figures)).toList()));
        this.chooseDay = chooseDay;
        this.moved = moved;
        getElement()
                .addEventListener("planning-choose", event -> choose(orderOf(event)))
                .addEventData(ORDER);
        getElement()
                .addEventListener(
                        "planning-moved",
                        event -> move(
                                orderOf(event),
                                LocalDate.parse(event.getEventData().get(DAY).asString())))
                .addEventData(ORDER)
                .addEventData(DAY);
    }

    private static OrderId orderOf(DomEvent event) {
        return new OrderId(event.getEventData().get(ORDER).asLong());
    }

    void choose(OrderId order) {
        chooseDay.accept(order);
    }

    void move(OrderId order, LocalDate day) {
        moved.accept(order, day);
    }

    private static Markup markup(Column column, Formatter figures) {
        List<Markup> parts = new ArrayList<>();
        int cards = column.entries().size();
        parts.add(Markup.of("h2", "", column.title()));
        parts.add(Markup.span("pw-soft", cards == 0 ? "" : Integer.toString(cards)));
        column.entries().stream().limit(MOST_CARDS).forEach(entry -> parts.add(WeekCard.of(entry, figures)));
        if (cards > MOST_CARDS) {
            parts.add(Markup.link("orders", figures.text("planning.more", cards - MOST_CARDS)));
        }
        Markup whole = Markup.div("planning-column", parts);
        return column.day().map(day -> whole.with("data-day", day.toString())).orElse(whole);
    }
}
