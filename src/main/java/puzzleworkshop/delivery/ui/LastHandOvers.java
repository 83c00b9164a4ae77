package puzzleworkshop.delivery.ui;

import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Span;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.ParcelId;
import puzzleworkshop.display.Feedback;
import puzzleworkshop.display.fields.BookButton;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.progress.Tick;
import puzzleworkshop.workshop.Stage;

/** What was handed over in the last minutes, each parcel with one press that takes all of it back. */
class LastHandOvers extends Div {

    private static final int MOST = 2;

    private final transient Bench bench;
    private final transient Orders orders;
    private final transient HandOverParts parts;
    private final transient Runnable takenBack;

    LastHandOvers(Bench bench, Orders orders, HandOverParts parts, Runnable takenBack) {
        this.bench = bench;
        this.orders = orders;
        this.parts = parts;
        this.takenBack = takenBack;
        addClassName("delivery-undo");
        getElement().setAttribute("aria-live", "polite");
    }

    void show() {
        removeAll();
        List<Tick> ticks = bench.undoable().stream()
                .filter(tick -> tick.stage() == Stage.HAND_OVER)
                .toList();
        Map<OrderId, Order> known = orders.all(ticks.stream().map(Tick::order).toList()).stream()
                .collect(Collectors.toMap(Order::id, Function.identity()));
        Map<OrderId, ParcelId> inside = parcelsOf(ticks);
        Map<ParcelId, List<Tick>> together = ticks.stream()
                .filter(tick -> inside.containsKey(tick.order()))
                .collect(Collectors.groupingBy(
                        tick -> inside.get(tick.order()), LinkedHashMap::new, Collectors.toList()));
        together.entrySet().stream().limit(MOST).forEach(one -> add(line(one.getKey(), one.getValue(), known)));
        setVisible(!together.isEmpty());
    }

    private Map<OrderId, ParcelId> parcelsOf(List<Tick> ticks) {
        return parts.parcels().ofAll(ticks.stream().map(Tick::order).toList()).stream()
                .flatMap(LastHandOvers::each)
                .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    }

    private static Stream<Map.Entry<OrderId, ParcelId>> each(Parcel parcel) {
        return parcel.orderIds().stream().map(order -> Map.entry(order, parcel.id()));
    }

    private Div line(ParcelId parcel, List<Tick> ticks, Map<OrderId, Order> known) {
        String numbers = ticks.stream()
                .map(tick -> known.get(tick.order()).number())
                .sorted()
                .collect(Collectors.joining(", "));
        Tick last = ticks.getFirst();
        String stage = getTranslation(last.stage().textKey());
        BookButton back = new BookButton(
                getTranslation("bench.undo"),
                () -> Feedback.unlessRefused(parts.figures(), "bench.undone", () -> {
                    parts.journey()
                            .takeBack(
                                    BookingKey.seen("take back", last.id()),
                                    parcel,
                                    parts.signedIn().name());
                    takenBack.run();
                }));
        back.setAriaLabel(getTranslation("bench.undo.label", numbers, stage));
        return new Div(
                new Span(getTranslation(
                        "bench.undo.line",
                        numbers,
                        stage,
                        last.who(),
                        parts.figures().moment(last.at()))),
                back);
    }
}
