package puzzleworkshop.delivery;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bench.Bench;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.delivery.sending.WayKind;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.events.OrderCameBack;
import puzzleworkshop.orders.events.OrderHandedOver;
import puzzleworkshop.workshop.Stage;

/**
 * A parcel's way from here to the customer. Sending and collecting tick the stage Hand over of all orders in the parcel; who
 * ticks it at the bench moves the parcel the same way. Orders are locked first, lowest id first, then the parcel.
 */
@Service
public class ParcelJourney {

    private final ParcelDesk desk;
    private final ParcelStore store;
    private final Parcels parcels;
    private final Orders orders;
    private final Bench bench;
    private final Bookings bookings;
    private final Clock clock;

    ParcelJourney(
            ParcelDesk desk,
            ParcelStore store,
            Parcels parcels,
            Orders orders,
            Bench bench,
            Bookings bookings,
            Clock clock) {
        this.desk = desk;
        this.store = store;
        this.parcels = parcels;
        this.orders = orders;
        this.bench = bench;
        this.bookings = bookings;
        this.clock = clock;
    }

    /**
     * The carrier has it: ticks Hand over of every order in it.
     *
     * @param tracking the carrier's number, kept with it or, when it cannot be sent, not at all; absent: what is kept stays
     * @param device as the browser names itself
     */
    @Books
    @Transactional
    public void send(BookingKey key, ParcelId id, Optional<String> tracking, String who, String device) {
        bookings.once(key, "send parcel " + id.value(), () -> {
            tracking.ifPresent(number -> parcels.tracked(id, number, who));
            handOver(key, id, WayKind.PARCEL, who, device);
        });
    }

    /** The customer came for it: ticks Hand over of every order in it. */
    @Books
    @Transactional
    public void collected(BookingKey key, ParcelId id, String who, String device) {
        bookings.once(
                key, "parcel " + id.value() + " collected", () -> handOver(key, id, WayKind.COLLECTION, who, device));
    }

    private void handOver(BookingKey key, ParcelId id, WayKind kind, String who, String device) {
        Parcel parcel = desk.lock(id);
        if (parcel.kind() != kind) {
            throw new Refused("delivery.other-kind", ParcelDesk.numbersOf(parcel));
        }
        if (!parcel.state().isHere()) {
            throw new Refused(
                    "delivery.gone",
                    ParcelDesk.numbersOf(parcel),
                    Sentence.of(parcel.state().textKey()));
        }
        List<Order> inside = orders.all(parcel.orderIds());
        // An address may have been changed since they were packed together.
        desk.requireOneWay(inside);
        List<OrderId> toTick = inside.stream()
                .filter(order -> order.next().isPresent())
                .map(Order::id)
                .toList();
        Bench.Outcome outcome = bench.tick(key.part("tick"), toTick, Stage.HAND_OVER, who, device);
        // One that is not packed keeps the whole parcel here: nothing of this booking stays.
        outcome.refused().values().stream().findFirst().ifPresent(why -> {
            throw new Refused(why);
        });
    }

    /**
     * It was not sent or collected after all: takes back Hand over of every order in it that can still be taken back.
     *
     * @throws Refused when none can, because too much time has passed or all have gone on
     */
    @Books
    @Transactional
    public void takeBack(BookingKey key, ParcelId id, String who) {
        bookings.once(key, "take back parcel " + id.value(), () -> {
            Parcel parcel = desk.lock(id);
            List<OrderId> last = parcel.orderIds().stream()
                    .filter(order -> bench.undoable(order)
                            .filter(tick -> tick.stage() == Stage.HAND_OVER)
                            .isPresent())
                    .toList();
            if (last.isEmpty()) {
                throw new Refused("delivery.take-back.too-late", ParcelDesk.numbersOf(parcel));
            }
            last.forEach(order -> bench.undo(key.part("undo " + order.value()), order, who));
        });
    }

    /** The customer may come for it; pressed again, it is ready since the first time. */
    @Transactional
    public Parcel ready(ParcelId id, String who) {
        Parcel parcel = desk.lock(id);
        if (parcel.state() == ParcelState.READY) {
            return parcel;
        }
        if (!parcel.isCollected() || parcel.state() != ParcelState.PACKED) {
            throw new Refused("delivery.not-to-collect", ParcelDesk.numbersOf(parcel));
        }
        orders.all(parcel.orderIds()).forEach(ParcelDesk::requirePacked);
        store.move(id, ParcelState.READY, Optional.of(clock.instant()), Optional.empty());
        desk.note(parcel, Sentence.of("delivery.history.ready"), who);
        desk.tell(id);
        return desk.get(id);
    }

    /**
     * The customer was reminded that it waits: within the transaction that keeps the letter.
     *
     * @param told the order whose letter it is, in whose history the letter stands already
     * @throws Refused when it does not wait any more
     */
    @Transactional
    public Parcel reminded(ParcelId id, OrderId told, String who) {
        Parcel parcel = desk.lock(id);
        if (parcel.state() != ParcelState.READY) {
            throw new Refused("delivery.not-to-collect", ParcelDesk.numbersOf(parcel));
        }
        store.reminded(id, clock.instant());
        parcel.orderIds().stream()
                .filter(order -> !order.equals(told))
                .forEach(order -> orders.note(order, Sentence.of("delivery.history.reminded"), who));
        desk.tell(id);
        return desk.get(id);
    }

    /** It is there: the carrier or the customer says so; said again, it arrived the first time. */
    @Transactional
    public Parcel delivered(ParcelId id, String who) {
        Parcel parcel = desk.lock(id);
        if (parcel.state().hasArrived()) {
            return parcel;
        }
        if (parcel.state() != ParcelState.SENT) {
            throw new Refused("delivery.not-sent", ParcelDesk.numbersOf(parcel));
        }
        store.move(id, ParcelState.DELIVERED, parcel.leftAt(), Optional.of(clock.instant()));
        desk.note(parcel, Sentence.of("delivery.history.delivered"), who);
        desk.tell(id);
        return desk.get(id);
    }

    /** Ticked here or at the bench: once all of its orders are handed over, the parcel has left, or was collected. */
    @EventListener
    @Transactional
    public void handedOver(OrderHandedOver event) {
        Order order = orders.get(event.order());
        Parcel parcel = desk.of(order.id()).filter(one -> one.state().isHere()).orElseGet(() -> {
            Parcel own = desk.begin(order, event.who());
            desk.takeFromOthers(order.id());
            store.put(own.id(), order.id());
            return desk.get(own.id());
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
        } else {
            store.move(parcel.id(), ParcelState.SENT, Optional.of(now), Optional.empty());
        }
        desk.tell(parcel.id());
    }

    /** A hand-over taken back brings its parcel back too, or neither comes back. */
    @EventListener
    @Transactional(propagation = Propagation.MANDATORY)
    public void takenBack(OrderCameBack event) {
        desk.of(event.order()).filter(parcel -> !parcel.state().isHere()).ifPresent(parcel -> {
            // The order is locked already; the others of the parcel are not, so that nobody waits in a circle.
            store.lock(parcel.id());
            // Its customer knows since then that it waits; collected at once, it was ready and collected in one moment.
            Optional<Instant> waiting = parcel.leftAt()
                    .filter(ready -> parcel.state() == ParcelState.COLLECTED
                            && parcel.arrivedAt().filter(ready::isBefore).isPresent());
            store.move(
                    parcel.id(),
                    waiting.isPresent() ? ParcelState.READY : ParcelState.PACKED,
                    waiting,
                    Optional.empty());
            parcel.orderIds()
                    .forEach(order -> orders.noteBeside(order, Sentence.of("delivery.history.back"), event.who()));
            desk.tell(parcel.id());
        });
    }
}
