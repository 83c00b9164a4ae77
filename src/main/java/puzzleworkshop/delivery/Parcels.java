package puzzleworkshop.delivery;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bench.Ticked;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.delivery.sending.ParcelMeasure;
import puzzleworkshop.delivery.sending.SendingWay;
import puzzleworkshop.delivery.sending.SendingWays;
import puzzleworkshop.delivery.sending.WayKind;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderHandedOver;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.workshop.Stage;

/**
 * Parcels from packed to arrived. Sending and collecting tick the stage Hand over of all orders in the parcel; who ticks it
 * at the bench moves the parcel the same way. Orders are locked first, lowest id first, then the parcel.
 */
@Service
public class Parcels {

    private static final int LONGEST_TRACKING = 80;

    private final ParcelStore store;
    private final SendingWays ways;
    private final Orders orders;
    private final Bench bench;
    private final Bookings bookings;
    private final ApplicationEventPublisher events;
    private final AfterCommit afterCommit;
    private final Clock clock;

    Parcels(
            ParcelStore store,
            SendingWays ways,
            Orders orders,
            Bench bench,
            Bookings bookings,
            ApplicationEventPublisher events,
            AfterCommit afterCommit,
            Clock clock) {
        this.store = store;
        this.ways = ways;
        this.orders = orders;
        this.bench = bench;
        this.bookings = bookings;
        this.events = events;
        this.afterCommit = afterCommit;
        this.clock = clock;
    }

    public Parcel get(ParcelId id) {
        return store.find(id).orElseThrow(() -> new Refused("delivery.unknown"));
    }

    /** The parcel that counts of an order; one sent again after a return is in another than before. */
    @Transactional(readOnly = true)
    public Optional<Parcel> of(OrderId order) {
        return store.ofOrders(List.of(order)).stream().findFirst();
    }

    /** The same for many at once. */
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

    @Transactional(readOnly = true)
    public List<Parcel> byTracking(String tracking) {
        return store.byTracking(tracking.strip());
    }

    /**
     * Puts orders of one customer into one parcel. Those that lay in others that are still here come over.
     *
     * @return the parcel; the same when they lie together already
     * @throws Refused when one is not packed yet, or is another customer's
     */
    @Transactional
    public Parcel pack(Collection<OrderId> which, String who) {
        List<Order> locked = lockAll(which);
        for (Order order : locked) {
            requirePacked(order);
            if (order.customer().id() != locked.getFirst().customer().id()) {
                throw new Refused(
                        "delivery.pack.other-customer",
                        order.number(),
                        order.customer().name());
            }
        }
        List<Parcel> here = store.ofOrders(which).stream()
                .filter(parcel -> parcel.state().isHere())
                .toList();
        Parcel into = here.isEmpty() ? begin(locked.getFirst(), who) : here.getFirst();
        for (Order order : locked) {
            if (into.orderIds().contains(order.id())) {
                continue;
            }
            takeFromOthers(order.id());
            store.put(into.id(), order.id());
            if (locked.size() > 1) {
                orders.note(order.id(), Sentence.of("delivery.history.together", numbers(locked)), who);
            }
        }
        tell(into.id());
        return get(into.id());
    }

    /** Takes an order out of a parcel with several, into one of its own. */
    @Transactional
    public Parcel alone(OrderId id, String who) {
        Order order = orders.lock(id);
        requirePacked(order);
        Parcel parcel = of(id).filter(
                        one -> one.state().isHere() && one.orders().size() > 1)
                .orElseThrow(() -> new Refused("delivery.pack.alone"));
        store.takeOut(parcel.id(), id);
        Parcel own = begin(order, who);
        store.put(own.id(), id);
        tell(parcel.id());
        tell(own.id());
        return get(own.id());
    }

    /** Lets a parcel that is still here leave by another way. */
    @Transactional
    public Parcel by(ParcelId id, SendingWay way, String who) {
        Parcel parcel = lock(id);
        if (parcel.state() != ParcelState.PACKED && way.kind() != parcel.kind()
                || !parcel.state().isHere()) {
            throw new Refused("delivery.way.too-late", numbersOf(parcel));
        }
        store.way(id, way.way().id(), way.kind());
        note(parcel, Sentence.of("delivery.history.way", way.name()), who);
        tell(id);
        return get(id);
    }

    /** Keeps what the scale and the tape say, and what the carrier takes; what is absent is cleared. */
    @Transactional
    public Parcel weighed(ParcelId id, Optional<ParcelMeasure> measure, Optional<Money> postage) {
        lock(id);
        store.weighed(id, measure, postage.map(Money::rounded));
        tell(id);
        return get(id);
    }

    /**
     * Keeps the carrier's number, typed or scanned; empty takes it away.
     *
     * @throws Refused when it is longer than any number, or stands on another parcel
     */
    @Transactional
    public Parcel tracked(ParcelId id, String tracking, String who) {
        Parcel parcel = lock(id);
        String number = Tracking.read(tracking);
        if (number.length() > LONGEST_TRACKING) {
            throw new Refused("delivery.tracking.long", LONGEST_TRACKING);
        }
        store.byTracking(number).stream()
                .filter(other -> !number.isEmpty() && !other.id().equals(id))
                .findFirst()
                .ifPresent(other -> {
                    throw new Refused("delivery.tracking.twice", number, numbersOf(other));
                });
        if (!number.equals(parcel.tracking())) {
            store.tracking(id, number);
            note(
                    parcel,
                    number.isEmpty()
                            ? Sentence.of("delivery.history.untracked")
                            : Sentence.of("delivery.history.tracked", number),
                    who);
        }
        tell(id);
        return get(id);
    }

    /**
     * The carrier has it: ticks Hand over of every order in it.
     *
     * @param device as the browser names itself
     */
    @Books
    @Transactional
    public void send(BookingKey key, ParcelId id, String who, String device) {
        bookings.once(key, "send parcel " + id.value(), () -> handOver(key, id, WayKind.PARCEL, who, device));
    }

    /** The customer came for it: ticks Hand over of every order in it. */
    @Books
    @Transactional
    public void collected(BookingKey key, ParcelId id, String who, String device) {
        bookings.once(
                key, "parcel " + id.value() + " collected", () -> handOver(key, id, WayKind.COLLECTION, who, device));
    }

    private void handOver(BookingKey key, ParcelId id, WayKind kind, String who, String device) {
        Parcel parcel = lock(id);
        if (parcel.kind() != kind) {
            throw new Refused("delivery.other-kind", numbersOf(parcel));
        }
        if (!parcel.state().isHere()) {
            throw new Refused(
                    "delivery.gone",
                    numbersOf(parcel),
                    Sentence.of(parcel.state().textKey()));
        }
        List<OrderId> toTick = orders.all(parcel.orderIds()).stream()
                .filter(order -> order.next().isPresent())
                .map(Order::id)
                .toList();
        Bench.Outcome outcome = bench.tick(key.part("tick"), toTick, Stage.HAND_OVER, who, device);
        // One that is not packed keeps the whole parcel here: nothing of this booking stays.
        outcome.refused().values().stream().findFirst().ifPresent(why -> {
            throw new Refused(why);
        });
    }

    /** The customer may come for it; pressed again, it is ready since the first time. */
    @Transactional
    public Parcel ready(ParcelId id, String who) {
        Parcel parcel = lock(id);
        if (parcel.state() == ParcelState.READY) {
            return parcel;
        }
        if (!parcel.isCollected() || parcel.state() != ParcelState.PACKED) {
            throw new Refused("delivery.not-to-collect", numbersOf(parcel));
        }
        orders.all(parcel.orderIds()).forEach(Parcels::requirePacked);
        store.move(id, ParcelState.READY, Optional.of(clock.instant()), Optional.empty());
        note(parcel, Sentence.of("delivery.history.ready"), who);
        events.publishEvent(new ParcelEvent.ReadyToCollect(id, parcel.orderIds(), who));
        tell(id);
        return get(id);
    }

    /** The customer is to be reminded that it waits. */
    @Transactional
    public Parcel remind(ParcelId id, String who) {
        Parcel parcel = lock(id);
        if (parcel.state() != ParcelState.READY) {
            throw new Refused("delivery.not-to-collect", numbersOf(parcel));
        }
        store.reminded(id, clock.instant());
        note(parcel, Sentence.of("delivery.history.reminded"), who);
        events.publishEvent(new ParcelEvent.ReminderToCollect(id, parcel.orderIds(), who));
        tell(id);
        return get(id);
    }

    /** It is there: the carrier or the customer says so; said again, it arrived the first time. */
    @Transactional
    public Parcel delivered(ParcelId id, String who) {
        Parcel parcel = lock(id);
        if (parcel.state().hasArrived()) {
            return parcel;
        }
        if (parcel.state() != ParcelState.SENT) {
            throw new Refused("delivery.not-sent", numbersOf(parcel));
        }
        store.move(id, ParcelState.DELIVERED, parcel.leftAt(), Optional.of(clock.instant()));
        note(parcel, Sentence.of("delivery.history.delivered"), who);
        events.publishEvent(new ParcelEvent.Delivered(id, parcel.orderIds(), who));
        tell(id);
        return get(id);
    }

    /** Ticked here or at the bench: once all of its orders are handed over, the parcel has left, or was collected. */
    @EventListener
    @Transactional
    public void handedOver(OrderHandedOver event) {
        Order order = orders.get(event.order());
        Parcel parcel = of(order.id()).filter(one -> one.state().isHere()).orElseGet(() -> {
            Parcel own = begin(order, event.who());
            takeFromOthers(order.id());
            store.put(own.id(), order.id());
            return get(own.id());
        });
        store.lock(parcel.id());
        boolean all = orders.all(parcel.orderIds()).stream()
                .allMatch(one -> one.next().isEmpty());
        if (!all) {
            return;
        }
        Instant now = clock.instant();
        if (parcel.isCollected()) {
            store.move(
                    parcel.id(),
                    ParcelState.COLLECTED,
                    Optional.of(parcel.leftAt().orElse(now)),
                    Optional.of(now));
            events.publishEvent(new ParcelEvent.Delivered(parcel.id(), parcel.orderIds(), event.who()));
        } else {
            store.move(parcel.id(), ParcelState.SENT, Optional.of(now), Optional.empty());
            events.publishEvent(new ParcelEvent.Sent(parcel.id(), parcel.orderIds(), event.who()));
        }
        tell(parcel.id());
    }

    /** A hand-over taken back at the bench brings its parcel back too. The bench tells it only after its commit. */
    @EventListener
    @Transactional(propagation = Propagation.REQUIRES_NEW)
    public void takenBack(Ticked ticked) {
        if (ticked.kind() != Ticked.Kind.UNDONE || ticked.stage() != Stage.HAND_OVER) {
            return;
        }
        of(ticked.order()).filter(parcel -> !parcel.state().isHere()).ifPresent(parcel -> {
            lock(parcel.id());
            store.move(parcel.id(), ParcelState.PACKED, Optional.empty(), Optional.empty());
            note(parcel, Sentence.of("delivery.history.back"), ticked.who());
            tell(parcel.id());
        });
    }

    private Parcel begin(Order order, String who) {
        SendingWay way = ways.orUsual(order.deliveryWay());
        return get(store.insert(order.customer().id(), Optional.of(way.way().id()), way.kind(), clock.instant(), who));
    }

    /** Out of a parcel that is still here; one that has left keeps it as what was sent before. */
    private void takeFromOthers(OrderId order) {
        of(order).ifPresent(before -> {
            if (!before.state().isHere()) {
                store.noLongerCounts(order);
            } else {
                store.takeOut(before.id(), order);
                if (before.orders().size() == 1) {
                    store.delete(before.id());
                }
                tell(before.id());
            }
        });
    }

    private Parcel lock(ParcelId id) {
        lockAll(get(id).orderIds());
        if (!store.lock(id)) {
            throw new Refused("delivery.unknown");
        }
        return get(id);
    }

    private List<Order> lockAll(Collection<OrderId> which) {
        if (which.isEmpty()) {
            throw new Refused("delivery.pack.nothing");
        }
        Map<Long, Order> locked = new TreeMap<>();
        which.stream()
                .distinct()
                .sorted(Comparator.comparingLong(OrderId::value))
                .forEach(id -> locked.put(id.value(), orders.lock(id)));
        return new ArrayList<>(locked.values());
    }

    private static void requirePacked(Order order) {
        if (!order.next().equals(Optional.of(Stage.HAND_OVER))) {
            throw new Refused(
                    "delivery.pack.not-yet",
                    order.number(),
                    order.next()
                            .map(stage -> Sentence.of(stage.textKey()))
                            .orElseGet(() -> Sentence.of(order.state().textKey())));
        }
    }

    private void note(Parcel parcel, Sentence what, String who) {
        parcel.orderIds().forEach(order -> orders.note(order, what, who));
    }

    private static String numbers(List<Order> of) {
        return String.join(", ", of.stream().map(Order::number).toList());
    }

    private static String numbersOf(Parcel parcel) {
        return String.join(
                ", ", parcel.orders().stream().map(order -> order.number()).toList());
    }

    private void tell(ParcelId id) {
        afterCommit.tell(new ParcelChanged(id));
    }
}
