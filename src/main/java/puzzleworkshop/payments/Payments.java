package puzzleworkshop.payments;

import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.measure.Sentence;
import puzzleworkshop.orders.OrderId;
import puzzleworkshop.orders.Orders;
import puzzleworkshop.workshop.Workshop;

/** Books money that was taken for an order or given back; lines are only added. Holds the order's row. */
@Service
public class Payments {

    private final PaymentStore store;
    private final Orders orders;
    private final Workshop workshop;
    private final Clock clock;

    Payments(PaymentStore store, Orders orders, Workshop workshop, Clock clock) {
        this.store = store;
        this.orders = orders;
        this.workshop = workshop;
        this.clock = clock;
    }

    /**
     * @throws Refused when the amount is not above zero, or more is given back than was received
     */
    @Transactional
    public void book(Payment payment) {
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
        store.add(payment.rounded(), clock.instant());
        orders.note(
                payment.order(),
                Sentence.of(refund ? "payments.history.refunded" : "payments.history.received", amount),
                payment.who());
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
}
