package puzzleworkshop.orders;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.events.OrderCameBack;
import puzzleworkshop.orders.events.OrderCancelled;
import puzzleworkshop.orders.events.OrderChanged;
import puzzleworkshop.orders.events.OrderHandedOver;
import puzzleworkshop.orders.history.HistoryLine;
import puzzleworkshop.orders.history.OrderHistory;
import puzzleworkshop.pricing.KeptPrice;
import puzzleworkshop.runtime.AfterCommit;
import puzzleworkshop.workshop.Stage;
import puzzleworkshop.workshop.Workshop;

/**
 * The orders of the workshop, from quote to closed. Every change locks the order's row first, is written to its history in
 * the same transaction and is told to open screens afterwards.
 */
@Service
public class Orders {

    private final OrderStore store;
    private final Customers customers;
    private final OrderHistory history;
    private final Workshop workshop;
    private final ApplicationEventPublisher events;
    private final AfterCommit afterCommit;
    private final Clock clock;

    Orders(
            OrderStore store,
            Customers customers,
            OrderHistory history,
            Workshop workshop,
            ApplicationEventPublisher events,
            AfterCommit afterCommit,
            Clock clock) {
        this.store = store;
        this.customers = customers;
        this.history = history;
        this.workshop = workshop;
        this.events = events;
        this.afterCommit = afterCommit;
        this.clock = clock;
    }

    /** Keeps a new quote and gives it its number. */
    @Transactional
    public Order quote(OrderDraft draft, String who) {
        Customer customer = customers.keep(draft.customer());
        Instant now = clock.instant();
        String number = store.nextNumber(now.atZone(workshop.zone()).getYear());
        OrderId id = store.insert(number, customer.id(), draft, now, who);
        write(
                id,
                who,
                Sentence.of("orders.history.quoted", draft.price().answer().toPay()));
        return get(id);
    }

    /**
     * Changes what was agreed, while it is a quote or before its picture is printed. A change of what the customer
     * approved takes the approval back.
     *
     * @param version of the order as it was looked at
     * @throws Refused when somebody changed the order meanwhile, or it is too late
     */
    @Transactional
    public Order change(OrderId id, long version, OrderDraft draft, String who) {
        Order order = lock(id);
        if (!order.mayStillChange()) {
            throw new Refused("orders.change.too-late", order.number());
        }
        Customer customer = customers.keep(draft.customer());
        if (!store.update(id, version, customer.id(), draft)) {
            throw new Refused("orders.changed-meanwhile", order.number());
        }
        boolean looksOther =
                !order.puzzle().equals(draft.puzzle()) || !order.picture().equals(draft.picture());
        if (looksOther && order.approval().isPresent()) {
            store.approve(id, Optional.empty());
            write(id, who, Sentence.of("orders.history.approval-void"));
        }
        write(id, who, Sentence.of("orders.history.changed"));
        return get(id);
    }

    /**
     * Takes the quote as an order; its sheets are reserved by the caller in the same transaction.
     *
     * @param promised the day that was said to the customer
     */
    @Transactional
    public Order confirm(OrderId id, LocalDate promised, String who) {
        Order order = lock(id);
        requireMove(order, OrderState.CONFIRMED);
        if (promised.isBefore(workshop.today())) {
            throw new Refused("orders.date.past", promised);
        }
        Order confirmed = store.confirm(id, Stage.PRINT, promised, clock.instant());
        write(id, who, Sentence.of("orders.history.confirmed", promised));
        return confirmed;
    }

    /** Gives the order up. Whatever it holds (sheets) is released by those who listen for the cancellation. */
    @Transactional
    public Order cancel(OrderId id, String reason, String who) {
        Order order = lock(id);
        requireMove(order, OrderState.CANCELLED);
        store.end(id, OrderState.CANCELLED, clock.instant());
        write(id, who, Sentence.of("orders.history.cancelled", reason));
        events.publishEvent(new OrderCancelled(id, who));
        return get(id);
    }

    /** The customer, or the seller for them, approves the picture with its cut lines as it stands now. */
    @Transactional
    public Order approve(OrderId id, String by, String who) {
        Order order = lock(id);
        if (order.picture().isEmpty()) {
            throw new Refused("orders.approve.no-picture", order.number());
        }
        if (order.state() != OrderState.CONFIRMED && order.state() != OrderState.QUOTE) {
            throw new Refused("orders.change.too-late", order.number());
        }
        if (order.approval().isPresent()) {
            return order;
        }
        Order approved = store.approve(id, Optional.of(new Approval(clock.instant(), by)));
        write(id, who, Sentence.of("orders.history.approved", by));
        return approved;
    }

    /**
     * Gives the order another picture, or frames its picture otherwise, as long as it is not printed. Takes an approval
     * and a word about softness back: both were said of what was there before.
     *
     * @throws Refused when it is too late
     */
    @Transactional
    public Order reframe(OrderId id, FramedPicture picture, String who) {
        Order order = lock(id);
        if (!order.mayStillChange()) {
            throw new Refused("orders.change.too-late", order.number());
        }
        if (order.picture().equals(Optional.of(picture))) {
            return order;
        }
        boolean other =
                order.picture().map(p -> !p.picture().equals(picture.picture())).orElse(true);
        store.reframe(id, picture);
        if (order.approval().isPresent()) {
            store.approve(id, Optional.empty());
            write(id, who, Sentence.of("orders.history.approval-void"));
        }
        write(id, who, Sentence.of(other ? "orders.history.picture" : "orders.history.reframed"));
        return get(id);
    }

    /** Keeps the customer's word that a soft picture will do. */
    @Transactional
    public Order acceptSoft(OrderId id, String word, String who) {
        lock(id);
        Order accepted = store.acceptSoft(id, word);
        write(id, who, Sentence.of("orders.history.soft-accepted", word));
        return accepted;
    }

    /**
     * Ticks the stage that is next. Of two who tick the same stage one wins; the other is told who did it and when.
     *
     * @throws Refused when it is not this stage's turn
     */
    @Transactional
    public Order completeStage(OrderId id, Stage stage, String who) {
        Order order = lock(id);
        if (!order.next().equals(Optional.of(stage))) {
            throw notItsTurn(order, stage);
        }
        if (stage == Stage.PRINT && order.approval().isEmpty()) {
            throw new Refused("orders.stage.not-approved", order.number());
        }
        Optional<Stage> following =
                stage == Stage.HAND_OVER ? Optional.empty() : Optional.of(Stage.values()[stage.ordinal() + 1]);
        Order moved = store.moveTo(id, following, clock.instant());
        write(id, who, Sentence.of("orders.history.stage." + stage.name()));
        if (following.isPresent()) {
            return moved;
        }
        events.publishEvent(new OrderHandedOver(id, who));
        return get(id); // who listens may have closed it
    }

    /** Puts the order back at an earlier stage: a mis-tap taken back, or work to be made again. */
    @Transactional
    public Order sendBack(OrderId id, Stage to, Sentence why, String who) {
        Order order = lock(id);
        if (order.state() == OrderState.CLOSED) {
            order = reopen(id, who);
        }
        boolean workable = order.state() == OrderState.CONFIRMED || order.state() == OrderState.HANDED_OVER;
        boolean backwards = order.next().map(next -> to.compareTo(next) < 0).orElse(true);
        if (!workable || !backwards) {
            throw new Refused("orders.stage.not-back", order.number(), Sentence.of(to.textKey()));
        }
        Order moved = store.moveTo(id, Optional.of(to), clock.instant());
        write(id, who, why);
        if (order.next().isPresent() || to != Stage.HAND_OVER) {
            return moved;
        }
        events.publishEvent(new OrderCameBack(id, who));
        return get(id);
    }

    /** Paid in full: nothing is left to do. */
    @Transactional
    public Order close(OrderId id, String who) {
        requireMove(lock(id), OrderState.CLOSED);
        Order closed = store.end(id, OrderState.CLOSED, clock.instant());
        write(id, who, Sentence.of("orders.history.closed"));
        return closed;
    }

    /** A closed order owes or is owed something again. */
    @Transactional
    public Order reopen(OrderId id, String who) {
        requireMove(lock(id), OrderState.HANDED_OVER);
        Order reopened = store.end(id, OrderState.HANDED_OVER, clock.instant());
        write(id, who, Sentence.of("orders.history.reopened"));
        return reopened;
    }

    /** Another day is promised; the customer was told. */
    @Transactional
    public Order promise(OrderId id, LocalDate day, String who) {
        lock(id);
        Order promised = store.promise(id, day);
        write(id, who, Sentence.of("orders.history.promised", day));
        return promised;
    }

    /** Adds a line to the order's history on behalf of another room and tells open screens. */
    @Transactional
    public void note(OrderId id, Sentence what, String who) {
        if (!store.lockRow(id)) {
            throw new Refused("orders.unknown");
        }
        write(id, who, what);
    }

    /**
     * The same without locking the order: of an order that is only touched by a command about another (a blank that followed
     * on a sheet gets it). Only lines are added, so nobody can be overtaken.
     */
    @Transactional
    public void noteBeside(OrderId id, Sentence what, String who) {
        write(id, who, what);
    }

    public Optional<Order> find(OrderId id) {
        return store.find(id);
    }

    /** Many at once; those that do not exist are left out. */
    public List<Order> all(Collection<OrderId> ids) {
        return ids.isEmpty() ? List.of() : store.all(ids);
    }

    public Order get(OrderId id) {
        return store.find(id).orElseThrow(() -> new Refused("orders.unknown"));
    }

    /** The price as it was worked out, with every line of its cost. */
    public KeptPrice keptPrice(OrderId id) {
        return KeptPrice.fromJson(store.keptPrice(id));
    }

    public Optional<Order> findByNumber(String number) {
        return store.findByNumber(number.strip());
    }

    /** Holds the order's row until the caller's transaction ends. */
    @Transactional
    public Order lock(OrderId id) {
        return store.lock(id).orElseThrow(() -> new Refused("orders.unknown"));
    }

    /** Those of the orders that are confirmed: neither quotes nor done nor given up. */
    public Set<OrderId> confirmed(Collection<OrderId> ids) {
        return store.confirmed(ids);
    }

    /** All confirmed orders, by the day promised. */
    public List<Order> open() {
        return store.open();
    }

    /** In the filter's sequence. */
    public List<Order> list(OrderFilter filter, int offset, int limit) {
        return store.list(filter, workshop.today(), offset, limit);
    }

    public int count(OrderFilter filter) {
        return store.count(filter, workshop.today());
    }

    public List<HistoryLine> history(OrderId id) {
        return history.of(id);
    }

    private void write(OrderId id, String who, Sentence what) {
        history.write(id, who, what);
        afterCommit.tell(new OrderChanged(id));
    }

    private void requireMove(Order order, OrderState to) {
        if (!order.state().mayBecome(to)) {
            throw new Refused(
                    "orders.state.no-way",
                    order.number(),
                    Sentence.of(order.state().textKey()),
                    Sentence.of(to.textKey()));
        }
    }

    private Refused notItsTurn(Order order, Stage stage) {
        String done = "orders.history.stage." + stage.name();
        boolean passed = order.next().map(next -> stage.compareTo(next) < 0).orElse(order.state() != OrderState.QUOTE);
        if (passed) {
            Optional<HistoryLine> line = history.of(order.id()).stream()
                    .filter(l -> l.what().key().equals(done))
                    .findFirst();
            if (line.isPresent()) {
                return new Refused(
                        "orders.stage.done-already",
                        Sentence.of(stage.textKey()),
                        line.get().who(),
                        line.get().at());
            }
        }
        return order.next()
                .map(next -> new Refused(
                        "orders.stage.not-yet",
                        order.number(),
                        Sentence.of(stage.textKey()),
                        Sentence.of(next.textKey())))
                .orElseGet(() -> new Refused(
                        "orders.stage.not-open",
                        order.number(),
                        Sentence.of(order.state().textKey())));
    }
}
