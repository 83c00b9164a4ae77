package puzzleworkshop.delivery;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.delivery.sending.ParcelMeasure;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;

/**
 * What lies in which parcel, by which way it leaves, what it weighs and which number it bears. How it travels is told to
 * {@link ParcelJourney}.
 */
@Service
public class Parcels {

    private static final int LONGEST_TRACKING = 80;

    private final ParcelDesk desk;
    private final ParcelStore store;
    private final Orders orders;

    Parcels(ParcelDesk desk, ParcelStore store, Orders orders) {
        this.desk = desk;
        this.store = store;
        this.orders = orders;
    }

    public Parcel get(ParcelId id) {
        return desk.get(id);
    }

    /**
     * The parcel in which an order is now. While it is made again after a return, the one in which it left before is not it.
     */
    @Transactional(readOnly = true)
    public Optional<Parcel> now(Order order) {
        return desk.of(order.id())
                .filter(parcel -> order.next().isEmpty() || parcel.state().isHere());
    }

    /** The parcels that count of many orders at once. */
    @Transactional(readOnly = true)
    public List<Parcel> ofAll(Collection<OrderId> of) {
        return of.isEmpty() ? List.of() : store.ofOrders(of);
    }

    /** Every parcel an order was in, oldest first. */
    @Transactional(readOnly = true)
    public List<Parcel> everOf(OrderId order) {
        return store.everOf(order);
    }

    /** All that have not arrived: packed, on their way, waiting to be collected. */
    @Transactional(readOnly = true)
    public List<Parcel> underWay() {
        return store.underWay();
    }

    /** Those that are ready and wait to be collected. */
    @Transactional(readOnly = true)
    public List<Parcel> waiting() {
        return store.waiting();
    }

    /** @param tracking as it is typed or scanned */
    @Transactional(readOnly = true)
    public List<Parcel> byTracking(String tracking) {
        return store.byTracking(Tracking.read(tracking));
    }

    /**
     * Puts orders of one customer into one parcel. Those that lay in others that are still here come over.
     *
     * @return the parcel; the same when they lie together already
     * @throws Refused when one is not packed yet, is another customer's, or goes another way or to another place
     */
    @Transactional
    public Parcel pack(Collection<OrderId> which, String who) {
        List<Order> locked = desk.lockAll(which);
        for (Order order : locked) {
            ParcelDesk.requirePacked(order);
            if (order.customer().id() != locked.getFirst().customer().id()) {
                throw new Refused(
                        "delivery.pack.other-customer",
                        order.number(),
                        order.customer().name());
            }
        }
        desk.requireOneWay(locked);
        List<Parcel> here = store.ofOrders(which).stream()
                .filter(parcel -> parcel.state().isHere())
                .toList();
        Parcel into = here.isEmpty() ? desk.begin(locked.getFirst(), who) : here.getFirst();
        for (Order order : locked) {
            if (into.orderIds().contains(order.id())) {
                continue;
            }
            desk.takeFromOthers(order.id());
            store.put(into.id(), order.id());
            if (locked.size() > 1) {
                orders.note(order.id(), Sentence.of("delivery.history.together", ParcelDesk.numbers(locked)), who);
            }
        }
        desk.tell(into.id());
        return desk.get(into.id());
    }

    /** Takes an order out of a parcel with several, into one of its own. */
    @Transactional
    public Parcel alone(OrderId id, String who) {
        Order order = orders.lock(id);
        ParcelDesk.requirePacked(order);
        Parcel parcel = desk.of(id)
                .filter(one -> one.state().isHere() && one.orders().size() > 1)
                .orElseThrow(() -> new Refused("delivery.pack.alone"));
        store.takeOut(parcel.id(), id);
        Parcel own = desk.begin(order, who);
        store.put(own.id(), id);
        desk.tell(parcel.id());
        desk.tell(own.id());
        return desk.get(own.id());
    }

    /** Lets a parcel that is still here leave by another way. */
    @Transactional
    public Parcel by(ParcelId id, SendingWay way, String who) {
        Parcel parcel = desk.lock(id);
        if (parcel.state() != ParcelState.PACKED && way.kind() != parcel.kind()
                || !parcel.state().isHere()) {
            throw new Refused("delivery.way.too-late", ParcelDesk.numbersOf(parcel));
        }
        store.way(id, way.way().id(), way.kind());
        desk.note(parcel, Sentence.of("delivery.history.way", way.name()), who);
        desk.tell(id);
        return desk.get(id);
    }

    /** Keeps what the scale and the tape say; what the carrier takes stays as it is. */
    @Transactional
    public Parcel weighed(ParcelId id, ParcelMeasure measure) {
        desk.lock(id);
        store.weighed(id, measure);
        desk.tell(id);
        return desk.get(id);
    }

    /** Keeps what the carrier takes; absent: it is not known. */
    @Transactional
    public Parcel costs(ParcelId id, Optional<Money> postage) {
        desk.lock(id);
        store.postage(id, postage.map(Money::rounded));
        desk.tell(id);
        return desk.get(id);
    }

    /**
     * Keeps the carrier's number, typed or scanned; empty takes it away.
     *
     * @throws Refused when it is longer than any number, or stands on another parcel
     */
    @Transactional
    public Parcel tracked(ParcelId id, String tracking, String who) {
        Parcel parcel = desk.lock(id);
        String number = Tracking.read(tracking);
        if (number.length() > LONGEST_TRACKING) {
            throw new Refused("delivery.tracking.long", LONGEST_TRACKING);
        }
        store.byTracking(number).stream()
                .filter(other -> !number.isEmpty() && !other.id().equals(id))
                .findFirst()
                .ifPresent(other -> {
                    throw new Refused("delivery.tracking.twice", number, ParcelDesk.numbersOf(other));
                });
        if (!number.equals(parcel.tracking())) {
            store.tracking(id, number);
            desk.note(
                    parcel,
                    number.isEmpty()
                            ? Sentence.of("delivery.history.untracked")
                            : Sentence.of("delivery.history.tracked", number),
                    who);
        }
        desk.tell(id);
        return desk.get(id);
    }
}
