package puzzleworkshop.payments;

import java.time.Clock;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.bookings.Bookings;
import puzzleworkshop.bookings.Books;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.OrderId;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.workshop.Workshop;

/** Books money that was taken for an order or given back; lines are only added. Holds the order's row. */
@Service
public class Payments {

    /** More digits before the point than any workshop is paid; the database holds fifteen. */
    private static final int MOST_DIGITS = 12;

    private final PaymentStore store;
    private final Bookings bookings;
    private final Orders orders;
    private final Workshop workshop;
    private final Clock clock;

    Payments(PaymentStore store, Bookings bookings, Orders orders, Workshop workshop, Clock clock) {
        this.store = store;
        this.bookings = bookings;
        this.orders = orders;
        this.workshop = workshop;
        this.clock = clock;
    }

    /**
     * @throws Refused when the amount is not above zero, the day lies ahead, or more is given back than was received
     */
    @Books
    @Transactional
    public void book(BookingKey key, Payment payment) {
        String said = payment.kind() + " " + payment.amount().rounded() + " for order " + payment.order() + ", "
                + payment.way() + ", " + payment.paidOn() + ": " + payment.note();
        bookings.once(key, said, () -> bookNow(payment));
    }

    private void bookNow(Payment payment) {
        orders.lock(payment.order());
        Money amount = payment.amount().rounded();
        boolean refund = payment.kind() == Payment.Kind.REFUND;
        if (refund) {
            Money received = received(payment.order());
            if (!amount.isPositive() || amount.compareTo(received) > 0) {
                throw new Refused("payments.refund.range", received);
            }
        } else if (!amount.isPositive()) {
            throw new Refused("payments.positive");
        }
        if (amount.amount().precision() - amount.amount().scale() > MOST_DIGITS) {
            throw new Refused("payments.impossible", amount);
        }
        if (payment.paidOn().isAfter(today())) {
            throw new Refused("payments.ahead", payment.paidOn());
        }
        store.add(payment.rounded(), clock.instant());
        orders.note(
                payment.order(),
                Sentence.of(refund ? "payments.history.refunded" : "payments.history.received", amount),
                payment.who());
    }

    /**
     * Takes a mistyped line back: it stays, and a line that undoes it stands beside it, on the day of the correction.
     *
     * @throws Refused when it was taken back before, or more would have been given back than was received
     */
    @Books
    @Transactional
    public void takeBack(BookingKey key, OrderId order, long line, String why, String who) {
        String said = "take back payment " + line + " of order " + order + ": " + why;
        bookings.once(key, said, () -> takeBackNow(order, line, why.strip(), who));
    }

    private void takeBackNow(OrderId order, long line, String why, String who) {
        orders.lock(order);
        List<Payment> lines = store.of(order);
        Payment wrong = lines.stream()
                .filter(one -> one.number() == line && !one.kind().takesBack())
                .findFirst()
                .orElseThrow(() -> new Refused("payments.take-back.unknown"));
        if (lines.stream().anyMatch(one -> one.takesBack().equals(OptionalLong.of(line)))) {
            throw new Refused("payments.take-back.done", wrong.amount());
        }
        if (why.isBlank()) {
            throw new Refused("payments.take-back.why");
        }
        if (received(order).minus(wrong.received()).isNegative()) {
            throw new Refused("payments.take-back.below", wrong.amount());
        }
        store.add(wrong.takenBack(today(), why, who), clock.instant());
        orders.note(order, Sentence.of("payments.history.taken-back", wrong.amount(), why), who);
    }

    private LocalDate today() {
        return workshop.today();
    }

    /** Oldest first. */
    @Transactional(readOnly = true)
    public List<Payment> of(OrderId order) {
        return store.of(order);
    }

    /** From the first to the last day, both included; oldest first. */
    @Transactional(readOnly = true)
    public List<Payment> between(LocalDate from, LocalDate to) {
        return store.between(from, to);
    }

    /** What came for an order less what was given back. */
    @Transactional(readOnly = true)
    public Money received(OrderId order) {
        return Money.sum(store.of(order).stream().map(Payment::received).toList(), workshop.currency());
    }

    /** Those of the orders for which money has come that was not given back. */
    @Transactional(readOnly = true)
    public Set<OrderId> withMoney(Collection<OrderId> of) {
        return store.received(of).entrySet().stream()
                .filter(came -> came.getValue().isPositive())
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
    }
}
