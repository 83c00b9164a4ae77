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
        this(entry, parts.figures());
        add(
                new Still(Markup.div(
                        "delivery-still",
                        OrderPreview.of(entry.first(), OrderPreview.Width.SMALL, figures),
                        Markup.div("delivery-words", words()))),
                new HandOverActions(entry, parts, true, again));
    }

    private HandOverCard(Entry entry, Formatter figures) {
        this.entry = entry;
        this.figures = figures;
        addClassName("delivery-card");
    }

    /** On the page of an order, which has shown its picture, who it is for, where it goes and which way already. */
    static HandOverCard onOrderPage(Entry entry, HandOverParts parts, Runnable again) {
        HandOverCard card = new HandOverCard(entry, parts.figures());
        card.addClassName("delivery-card-short");
        card.add(
                new Still(Markup.div("delivery-words", card.shortWords())),
                new HandOverActions(entry, parts, false, again));
        return card;
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
        words.add(numbers());
        words.add(way());
        if (!entry.isCollected()) {
            words.add(WhereTo.of(entry, figures));
        }
        words.addAll(sinceWhen());
        entry.first().promised().ifPresent(day -> words.add(small(figures.text("delivery.promised", day))));
        words.add(ToPay.of(entry, figures));
        return words;
    }

    private List<Markup> shortWords() {
        List<Markup> words = new ArrayList<>();
        if (entry.orders().size() > 1) {
            words.add(numbers());
        }
        // what is still here has its way in a field above, but not when it can be collected
        if (!entry.state().isHere() || entry.isCollected()) {
            words.add(way());
        }
        if (!entry.isCollected()) {
            words.addAll(WhereTo.besideAddress(entry, figures));
        }
        words.addAll(sinceWhen());
        words.add(ToPay.of(entry, figures));
        return words;
    }

    private Markup numbers() {
        return Markup.div(
                "delivery-numbers",
                entry.orders().stream()
                        .map(order -> Markup.link("orders/" + order.number(), order.number()))
                        .toList());
    }

    private Markup way() {
        String way = entry.way().name();
        return small(
                entry.isCollected() && !entry.way().collectWindow().isBlank()
                        ? way + " · " + entry.way().collectWindow()
                        : way);
    }

    private List<Markup> sinceWhen() {
        List<Markup> words = new ArrayList<>();
        entry.parcel()
                .flatMap(Parcel::leftAt)
                .ifPresent(at -> words.add(
                        small(figures.text(entry.isCollected() ? "delivery.ready-since" : "delivery.sent-at", at))));
        if (entry.isCollected()) {
            entry.parcel()
                    .flatMap(Parcel::remindedAt)
                    .ifPresent(at -> words.add(small(figures.text("delivery.reminded-at", at))));
        }
        return words;
    }

    private static Markup small(String text) {
        return Markup.span("pw-small", text);
    }
}
