package puzzleworkshop.letters;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.ParcelState;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.delivery.sending.WayKind;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.measure.OrderRef;
import puzzleworkshop.orders.Order;
import puzzleworkshop.workshop.Workshop;

/** How an order travels, from its parcel: who carries it, its number and where that leads, or when it can be collected. */
@Component
class ParcelFacts implements LetterFacts {

    private final Parcels parcels;
    private final SendingWays ways;
    private final Workshop workshop;
    private final Formatter figures;

    ParcelFacts(Parcels parcels, SendingWays ways, Workshop workshop, Formatter figures) {
        this.parcels = parcels;
        this.ways = ways;
        this.workshop = workshop;
        this.figures = figures;
    }

    @Override
    public Map<LetterField, String> of(Order order) {
        Map<LetterField, String> facts = new EnumMap<>(LetterField.class);
        Optional<Parcel> parcel = parcels.now(order);
        SendingWay way = ways.orUsual(parcel.flatMap(Parcel::way).or(order::deliveryWay));
        if (way.kind() == WayKind.COLLECTION) {
            facts.put(LetterField.COLLECT, way.collectWindow());
        } else {
            facts.put(LetterField.CARRIER, way.name());
        }
        parcel.map(one -> together(one, order))
                .filter(others -> !others.isEmpty())
                .ifPresent(others -> facts.put(LetterField.TOGETHER, others));
        parcel.filter(one -> one.state() == ParcelState.READY)
                .flatMap(Parcel::leftAt)
                .ifPresent(at ->
                        facts.put(LetterField.READY_SINCE, figures.day(LocalDate.ofInstant(at, workshop.zone()))));
        parcel.map(Parcel::tracking).filter(code -> !code.isBlank()).ifPresent(code -> {
            facts.put(LetterField.TRACKING, code);
            way.link(code).ifPresent(link -> facts.put(LetterField.TRACKING_LINK, link));
        });
        return facts;
    }

    private static String together(Parcel parcel, Order order) {
        return parcel.orders().stream()
                .filter(one -> !one.id().equals(order.id()))
                .map(OrderRef::number)
                .collect(Collectors.joining(", "));
    }
}
