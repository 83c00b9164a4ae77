package puzzleworkshop.letters;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import org.springframework.stereotype.Component;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.delivery.sending.WayKind;
import puzzleworkshop.orders.Order;

/** How an order travels, from its parcel: who carries it, its number and where that leads, or when it can be collected. */
@Component
class ParcelFacts implements LetterFacts {

    private final Parcels parcels;
    private final SendingWays ways;

    ParcelFacts(Parcels parcels, SendingWays ways) {
        this.parcels = parcels;
        this.ways = ways;
    }

    @Override
    public Map<LetterField, String> of(Order order) {
        Map<LetterField, String> facts = new EnumMap<>(LetterField.class);
        Optional<Parcel> parcel = parcels.of(order.id());
        SendingWay way = ways.orUsual(parcel.flatMap(Parcel::way).or(order::deliveryWay));
        if (way.kind() == WayKind.COLLECTION) {
            facts.put(LetterField.COLLECT, way.collectWindow());
        } else {
            facts.put(LetterField.CARRIER, way.name());
        }
        parcel.map(Parcel::tracking).filter(code -> !code.isBlank()).ifPresent(code -> {
            facts.put(LetterField.TRACKING, code);
            way.link(code).ifPresent(link -> facts.put(LetterField.TRACKING_LINK, link));
        });
        return facts;
    }
}
