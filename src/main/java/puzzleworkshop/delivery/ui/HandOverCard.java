package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import java.util.ArrayList;
import java.util.List;
import puzzleworkshop.delivery.HandOvers.Entry;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.Markup;
import puzzleworkshop.display.Still;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.ui.OrderPreview;

/** One parcel on the page of the day: who, what, which way, what is still to be paid, and the one thing to press. */
@StyleSheet("context://delivery.css")
class HandOverCard extends Div {

    private final transient Entry entry;
    private final transient Formatter figures;

    /** @param again shows the page as it is now */
    HandOverCard(Entry entry, HandOverParts parts, Runnable again) {
        this.entry = entry;
        this.figures = parts.figures();
        addClassName("delivery-card");
        add(
                new Still(Markup.div(
                        "delivery-still",
                        OrderPreview.of(entry.first(), OrderPreview.Width.SMALL, figures),
                        Markup.div("delivery-words", words()))),
                new HandOverActions(entry, parts, again));
    }

    boolean holds(OrderId order) {
        return entry.ids().contains(order);
    }

    void mark() {
        addClassName("delivery-card-found");
    }

    private List<Markup> words() {
        List<Markup> words = new ArrayList<>();
        words.add(Markup.of("h3", "", entry.first().customer().name()));
        words.add(Markup.div(
                "delivery-numbers",
                entry.orders().stream()
                        .map(order -> Markup.link("orders/" + order.number(), order.number()))
                        .toList()));
        String way = entry.way().name();
        words.add(small(
                entry.isCollected() && !entry.way().collectWindow().isBlank()
                        ? way + " · " + entry.way().collectWindow()
                        : way));
        if (!entry.isCollected()) {
            words.add(WhereTo.of(entry, figures));
        }
        entry.parcel()
                .flatMap(Parcel::leftAt)
                .ifPresent(at -> words.add(
                        small(figures.text(entry.isCollected() ? "delivery.ready-since" : "delivery.sent-at", at))));
        if (entry.isCollected()) {
            entry.parcel()
                    .flatMap(Parcel::remindedAt)
                    .ifPresent(at -> words.add(small(figures.text("delivery.reminded-at", at))));
        }
        entry.first().promised().ifPresent(day -> words.add(small(figures.text("delivery.promised", day))));
        words.add(ToPay.of(entry, figures));
        return words;
    }

    private static Markup small(String text) {
        return Markup.span("pw-small", text);
    }
}
