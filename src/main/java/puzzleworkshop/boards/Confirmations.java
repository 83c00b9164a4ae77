package puzzleworkshop.boards;

import java.time.LocalDate;
import org.springframework.context.event.EventListener;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.cutting.trials.PlannedTrials;
import puzzleworkshop.machines.Machines;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Order;
import puzzleworkshop.orders.OrderDraft;
import puzzleworkshop.orders.OrderState;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.orders.events.OrderCancelled;
import puzzleworkshop.workshop.Workshop;

/** Turns a quote into an order: its sheets are held and its day is promised, all or nothing. */
@Service
public class Confirmations {

    private final Orders orders;
    private final Bookings bookings;
    private final OrderBoards boards;
    private final Machines machines;
    private final PlannedTrials trials;
    private final Workshop workshop;

    Confirmations(
            Orders orders,
            Bookings bookings,
            OrderBoards boards,
            Machines machines,
            PlannedTrials trials,
            Workshop workshop) {
        this.orders = orders;
        this.bookings = bookings;
        this.boards = boards;
        this.machines = machines;
        this.trials = trials;
        this.workshop = workshop;
    }

    /** Keeps a quote together with the boards chosen for it. */
    @Transactional
    @Books
    public Order quote(BookingKey key, OrderDraft draft, BlankPlan plan, String who) {
        String said = "quote to " + draft.customer().name() + " at "
                + draft.price().answer().toPay();
        return bookings.once(
                key,
                said,
                () -> quoteNow(draft, plan, who),
                order -> order.id().value(),
                id -> orders.get(new OrderId(id)));
    }

    private Order quoteNow(OrderDraft draft, BlankPlan plan, String who) {
        Order order = orders.quote(draft, who);
        boards.plan(order.id(), plan);
        return order;
    }

    /** Changes what was agreed, and its boards: a confirmed order lets those go that no longer do and holds others. */
    @Transactional
    public Order change(OrderId id, long version, OrderDraft draft, BlankPlan plan, String who) {
        Order before = orders.get(id);
        Order order = orders.change(id, version, draft, who);
        if (order.state() == OrderState.QUOTE) {
            boards.plan(id, plan);
        } else if (needsOtherBoards(before, order)) {
            boards.replace(id, plan, who);
        }
        if (order.state() != OrderState.QUOTE && !before.board().equals(order.board())) {
            trials.dropFor(id);
            planTrial(order, who);
        }
        return order;
    }

    private static boolean needsOtherBoards(Order before, Order now) {
        return !before.board().equals(now.board())
                || !before.puzzle().finished().equals(now.puzzle().finished())
                || before.puzzle().tray() != now.puzzle().tray()
                || before.quantity() != now.quantity();
    }

    /**
     * @throws Refused when the quote has run out, has no day, or one of its sheets was taken meanwhile; nothing is
     *     changed then
     */
    @Transactional
    public Order confirm(OrderId id, String who) {
        Order order = orders.lock(id);
        LocalDate promised = order.promised().orElseThrow(() -> new Refused("orders.confirm.no-day", order.number()));
        return confirm(id, promised, who);
    }

    /**
     * The same, promising another day than the quote says.
     *
     * @throws Refused as {@link #confirm(OrderId, String)}
     */
    @Transactional
    public Order confirm(OrderId id, LocalDate promised, String who) {
        Order order = orders.lock(id);
        LocalDate today = workshop.today();
        if (order.validUntil().isBefore(today)) {
            throw new Refused("orders.confirm.run-out", order.number(), order.validUntil());
        }
        Order confirmed = orders.confirm(id, promised, who);
        boards.hold(id, who);
        planTrial(confirmed, who);
        return confirmed;
    }

    /** What is promised on settings that nobody has proven is tried before it is cut. */
    private void planTrial(Order order, String who) {
        machines.standard()
                .flatMap(machine -> trials.planFor(order.id(), order.number(), machine, order.board(), who))
                .ifPresent(trial -> orders.note(order.id(), Sentence.of("orders.history.trial-planned"), who));
    }

    @EventListener
    void givenUp(OrderCancelled event) {
        trials.dropFor(event.order());
    }
}
